import type { Item } from '../catalogue/index.ts';
import { idWords, itemName } from '../derive/index.ts';
import { blocksIn } from '../link/index.ts';
import type { Block, Procedure, Section, Step } from '../syntax/index.ts';
import type { Desk } from './desk.ts';
import { stepWords } from './steps-in.ts';

/** A part of a file that has a name; offsets are those of the text. */
export interface OutlineSymbol {
  readonly name: string;
  readonly detail: string;
  readonly kind: 'section' | 'step' | 'kind' | 'item';
  readonly from: number;
  readonly to: number;
  /** What is marked when it is chosen, within the part. */
  readonly nameFrom: number;
  readonly nameTo: number;
  readonly children: readonly OutlineSymbol[];
}

/** Sections with their steps, or the entries of a machine by kind. */
export function outlineOf(desk: Desk, file: string): readonly OutlineSymbol[] {
  const written = desk.written(file);
  if (written !== undefined) return nested(written.sections, written);
  const machine = [...desk.inspection.linked.manual.machines.values()].find(
    (one) => one.file === file,
  );
  const groups = Map.groupBy(machine?.items.values() ?? [], ({ kind }) => kind);
  return [...groups].flatMap(([kind, items]) => groupOf(kind, items));
}

function groupOf(kind: string, items: readonly Item[]): readonly OutlineSymbol[] {
  const children = items.map((item): OutlineSymbol => {
    const [from, to] = [item.place.start.offset, item.place.end.offset];
    const detail = itemName(item);
    return {
      name: item.id,
      detail,
      kind: 'item',
      from,
      to,
      nameFrom: from,
      nameTo: to,
      children: [],
    };
  });
  const [first, last] = [children[0], children.at(-1)];
  if (first === undefined || last === undefined) return [];
  const { from, nameFrom, nameTo } = first;
  const detail = `${items.length}`;
  return [
    { name: idWords(kind), detail, kind: 'kind', from, to: last.to, nameFrom, nameTo, children },
  ];
}

/** A section holds the deeper ones below it. */
function nested(sections: readonly Section[], procedure: Procedure): readonly OutlineSymbol[] {
  const out: OutlineSymbol[] = [];
  for (let i = 0; i < sections.length; ) {
    const section = sections[i];
    if (section === undefined) break;
    const rest = sections.slice(i + 1);
    const found = section.depth === 0 ? 0 : rest.findIndex(({ depth }) => depth <= section.depth);
    const below = rest.slice(0, found < 0 ? rest.length : found);
    const { start, end } = section.headingPlace ?? section.place;
    const last = below.at(-1) ?? section;
    out.push({
      name: section.title || section.id,
      detail: section.title === undefined ? '' : section.id,
      kind: 'section',
      from: section.place.start.offset,
      to: last.place.end.offset,
      nameFrom: start.offset,
      nameTo: end.offset,
      children: [...stepsOf(section.blocks, procedure), ...nested(below, procedure)],
    });
    i += 1 + below.length;
  }
  return out;
}

function stepsOf(blocks: readonly Block[], procedure: Procedure): readonly OutlineSymbol[] {
  return blocks.flatMap((block) =>
    block.type === 'steps'
      ? block.steps.map((step) => symbolOf(step, procedure))
      : stepsOf(blocksIn(block), procedure),
  );
}

function symbolOf(step: Step, procedure: Procedure): OutlineSymbol {
  const [from, to] = [step.place.start.offset, step.place.end.offset];
  const line = /^[^\r\n]*/.exec(procedure.text.slice(from, to))?.[0] ?? '';
  const number = /^\d{1,9}/.exec(line)?.[0];
  const words = stepWords(step, procedure) || 'step';
  return {
    name: number === undefined ? words : `${number}. ${words}`,
    detail: step.id?.id ?? '',
    kind: 'step',
    from,
    to,
    nameFrom: from,
    nameTo: from + line.length,
    children: stepsOf(step.blocks, procedure),
  };
}
