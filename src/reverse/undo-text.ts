import { printCondition, type VariantSet } from '../applicability/index.ts';
import type { StatefulItem } from '../catalogue/index.ts';
import type { Run } from '../ledger/index.ts';
import type { Perform } from '../syntax/index.ts';
import { type PointAction, pointsToOpen } from './filling.ts';
import type { Undo } from './undo.ts';

/** A step to be written: its Markdown, without the number, and what it does. */
export interface WrittenStep {
  readonly lines: readonly string[];
  readonly undos: readonly Undo[];
}

/**
 * Steps in Markdown: what left in one step comes back in one step, and a fill is a step of its own. What a
 * performed procedure left is brought back by its counterpart, where there is one. At `cuts` a step begins.
 */
export function stepsOf(
  undos: readonly Undo[],
  run: Run,
  counterpart: (perform: Perform) => string | undefined,
  cuts: readonly Undo[] = [],
): readonly WrittenStep[] {
  const groups: Undo[][] = [];
  for (const undo of undos) {
    const last = groups.at(-1);
    const before = last?.at(-1);
    const isOn = before !== undefined && belongTogether(before, undo) && !cuts.includes(undo);
    if (last !== undefined && isOn) last.push(undo);
    else groups.push([undo]);
  }
  const performed = new Set<Perform>();
  return groups.flatMap((group): readonly WrittenStep[] => {
    const perform = performOf(group[0]);
    const other = perform && counterpart(perform);
    if (perform === undefined || other === undefined) return written(group, run);
    // Once for all that the performed procedure left, at the turn of the last of it.
    const rest = undos.filter((undo) => performOf(undo) === perform);
    if (performed.has(perform) || rest.at(-1) !== group.at(-1)) return [];
    performed.add(perform);
    const under = group[0]?.under ?? run.scope;
    return [{ lines: [`::perform{procedure=${other}${whenOf(under, run)}}`], undos: rest }];
  });
}

/** A step, and round a fill those that open the filler and shut it. */
function written(group: readonly Undo[], run: Run): readonly WrittenStep[] {
  const step = { lines: linesOf(group, run), undos: group };
  const fill = group.find(({ verb }) => verb === 'fill');
  if (fill === undefined) return [step];
  const { open, shut } = pointsToOpen(fill.account.item, fill.under, run);
  const beside = (some: readonly PointAction[]): readonly WrittenStep[] =>
    some.length === 0 ? [] : [{ lines: [pointWords(some, run)], undos: group }];
  return [...beside(open), step, ...beside(shut)];
}

const pointWords = (points: readonly PointAction[], run: Run): string =>
  points
    .flatMap(({ item: { id }, under, actions }) =>
      actions.map(({ verb, isNew = false, to }) => {
        const attributes = [`item=${id}`, isNew ? 'new' : '', to === undefined ? '' : `to=${to}`];
        return `:${verb}{${attributes.filter(Boolean).join(' ')}${whenOf(under, run)}}.`;
      }),
    )
    .join(' ');

/** Steps as items of a numbered list. */
export function listOf(steps: readonly WrittenStep[], from = 1, indent = ''): string {
  return steps
    .map(({ lines }, i) => {
      const marker = `${from + i}. `;
      const inner = indent + ' '.repeat(marker.length);
      return lines
        .map((line, n) => (n === 0 ? `${indent}${marker}${line}` : line === '' ? '' : inner + line))
        .join('\n');
    })
    .join('\n');
}

const performOf = (undo: Undo | undefined): Perform | undefined =>
  undo?.entry.op.type === 'perform' ? undo.entry.op.perform : undefined;

function belongTogether(a: Undo, b: Undo): boolean {
  if (performOf(a) !== undefined && performOf(a) === performOf(b)) return true;
  if (isFluid(a) !== isFluid(b)) return false;
  if (isFluid(a)) return a.account.item === b.account.item;
  return (
    performOf(a) === performOf(b) &&
    a.entry.op.step === b.entry.op.step &&
    a.entry.op.section === b.entry.op.section
  );
}

const isFluid = (undo: Undo): boolean => undo.account.item.kind === 'circuit';

function linesOf(group: readonly Undo[], run: Run): string[] {
  const sentences = byInstances(group).map(({ undo, each }) => `${directive(undo, each, run)}.`);
  const blocks = group.flatMap((undo) => {
    const { item } = undo.account;
    if (undo.verb === 'fill')
      return [['', `:::fluid{item=${item.id}${whenOf(undo.under, run)}}`, ':::']];
    return undo.verb === 'torque' && needsTable(item)
      ? [['', `:::torque{item=${item.id}${whenOf(undo.under, run)}}`, ':::']]
      : [];
  });
  return [sentences.join(' '), ...blocks.flat()];
}

/** Several stages or a pattern are more than a sentence can say. */
function needsTable(item: StatefulItem): boolean {
  return (
    item.kind === 'fastener' &&
    ((item.torque?.written.length ?? 0) > 1 || item.pattern !== undefined)
  );
}

/** The same for all instances of an item is said once. */
function byInstances(group: readonly Undo[]): readonly { undo: Undo; each: readonly string[] }[] {
  const said: { undo: Undo; each: string[] }[] = [];
  for (const undo of group) {
    const same = said.find(
      ({ undo: one }) =>
        one.account.item === undo.account.item &&
        one.verb === undo.verb &&
        one.under === undo.under &&
        one.qty === undo.qty &&
        one.isNew === undo.isNew,
    );
    const instance = undo.account.instance === undefined ? [] : [undo.account.instance];
    if (same !== undefined && instance.length > 0) same.each.push(...instance);
    else said.push({ undo, each: instance });
  }
  return said;
}

function directive(undo: Undo, each: readonly string[], run: Run): string {
  const { item } = undo.account;
  const instances = item.each?.length ?? 0;
  const attributes = [
    `item=${item.id}`,
    undo.qty === undefined ? '' : `qty=${undo.qty}`,
    undo.isNew ? 'new' : '',
    undo.to === undefined ? '' : `to=${undo.to}`,
    each.length === 0 || each.length === instances ? '' : `each="${each.join(' ')}"`,
  ].filter(Boolean);
  return `:${undo.verb}{${attributes.join(' ')}${whenOf(undo.under, run)}}`;
}

function whenOf(under: VariantSet, run: Run): string {
  const condition = run.setting.space.describe(under, run.scope);
  if (condition === undefined || condition === 'too-long') return '';
  const text = printCondition(condition);
  return text.includes('"') ? ` when='${text.replaceAll("'", '&#39;')}'` : ` when="${text}"`;
}
