import type { Item } from '../catalogue/index.ts';
import { itemName } from '../derive/index.ts';
import { isStateful, itemStates } from '../ledger/index.ts';
import { completeCondition } from './complete-condition.ts';
import type { Desk } from './desk.ts';
import { frontOf } from './front-at.ts';
import type { Proposal } from './proposal.ts';
import { procedureIn } from './state-here.ts';
import { type YamlAt, yamlAt } from './yaml-at.ts';
import { keysOf, shapesAt, valuesOf, type YamlKind } from './yaml-shapes.ts';

/** Members of an entry whose values are ids of other entries. */
const naming: ReadonlySet<string> = new Set([
  'behind',
  'blocks',
  'circuit',
  'coat',
  'consumables',
  'drain',
  'fill',
  'hazards',
  'holds',
  'in',
  'isolate-before',
  'item',
  'never-with',
  'on',
  'renew-with',
  'tools',
]);

/** What may be typed in the YAML of a manual: keys, listed values, ids. */
export function completeYaml(desk: Desk, file: string, offset: number): readonly Proposal[] {
  const text = desk.textOf(file) ?? '';
  const kind: YamlKind =
    file === 'manual.yaml' ? 'manual' : file.endsWith('.md') ? 'front' : 'machine';
  const at = yamlAt(text, kind === 'front' ? (frontOf(text)?.start ?? 0) : 0, offset);
  if (at === undefined) return [];
  const { key, path, from, to } = at;
  const words = (found: readonly (readonly [string, string?])[], of: Proposal['kind']) =>
    found.map(([label, detail], rank): Proposal => {
      return { label, kind: of, ...(detail && { detail }), text: label, from, to, rank };
    });
  if (key === undefined) return keys(desk, file, kind, at);
  const whole = at.isElement && path.at(-1) === key ? path : [...path, key];
  const { linked } = desk.inspection;
  if (key === 'when' || (key === 'never' && kind === 'manual'))
    return completeCondition(linked.manual, at.typed.replace(/^["']/, ' '), from, offset);
  if (key === 'machine' && kind === 'front')
    return words(
      [...linked.manual.machines.values()].map(({ id, name }) => [id, name] as const),
      'value',
    );
  if (key === 'follow-on')
    return words(
      [...linked.procedures].map(([id, { procedure }]) => [id, procedure.front.title] as const),
      'procedure',
    );
  const items = itemsFor(desk, file);
  if (path[0] === 'starts' || path[0] === 'leaves') return words(statesOf(items.get(key)), 'value');
  if (naming.has(key))
    return words(
      [...items.values()].map((item) => [item.id, `${item.kind}: ${itemName(item)}`] as const),
      'item',
    );
  return words(
    valuesOf(shapesAt(kind, whole)).map((value) => [value] as const),
    'value',
  );
}

function keys(desk: Desk, file: string, kind: YamlKind, at: YamlAt): readonly Proposal[] {
  const { path, from, to, beside } = at;
  const isStates = kind === 'front' && (path[0] === 'starts' || path[0] === 'leaves');
  if (isStates && path.length === 1)
    return [...itemsFor(desk, file).values()].filter(isStateful).map((item) => ({
      label: item.id,
      kind: 'item',
      detail: itemName(item),
      text: `${item.id}: `,
      from,
      to,
    }));
  return keysOf(shapesAt(kind, path))
    .filter(({ key }) => !beside.has(key))
    .map(({ key, isNeeded, more }) => ({
      label: key,
      kind: 'attribute',
      ...(isNeeded && { detail: 'needed' }),
      ...(more !== undefined && { more }),
      text: `${key}: `,
      from,
      to,
      rank: isNeeded ? 0 : 1,
    }));
}

const statesOf = (item: Item | undefined): readonly (readonly [string])[] =>
  item !== undefined && isStateful(item) ? itemStates(item).map((state) => [state] as const) : [];

/** The entries of a machine's file, or those that a procedure may name. */
function itemsFor(desk: Desk, file: string): ReadonlyMap<string, Item> {
  const { linked } = desk.inspection;
  const { machines } = linked.manual;
  const own = [...machines.values()].find((machine) => machine.file === file);
  const one = procedureIn(desk, linked, file);
  const only = machines.size === 1 ? [...machines.values()][0] : undefined;
  const found = own ?? one?.catalogue ?? only;
  return found === undefined ? new Map() : desk.entriesOf(found);
}
