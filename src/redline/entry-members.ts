import type { Item } from '../catalogue/index.ts';
import { parseQuantity, type Quantity } from '../quantity/index.ts';
import { memberText } from './member-text.ts';

/** A member of an entry that has no reader of its own here. */
export interface Member {
  readonly text: string;
  /** Where it is one. */
  readonly quantity: Quantity | undefined;
}

/** Read elsewhere, or no words of the author. */
const passedOver: ReadonlySet<string> = new Set([
  'id',
  'kind',
  'place',
  'placeOf',
  'faulty',
  'screw',
  'torque',
  'limits',
  'when',
  'count',
  'fluid',
  'mix',
  'capacity',
  'signal',
  'hazard',
  'harm',
  'avoid',
]);

/** Ids of entries, in no order that means anything. */
const references: ReadonlySet<string> = new Set([
  'in',
  'hazards',
  'holds',
  'behind',
  'on',
  'circuit',
  'coat',
  'renew-with',
  'drain',
  'fill',
  'never-with',
  'isolate-before',
  'blocks',
]);
const quantities: ReadonlySet<string> = new Set([
  'pressure',
  'mass',
  'loss',
  'length',
  'extension',
]);

/** What an entry says, by member; ids of other entries as `idOf` maps them. Members that say nothing are left out. */
export function entryMembers(
  item: Item,
  idOf: (id: string) => string,
): ReadonlyMap<string, Member> {
  const members = new Map<string, Member>();
  for (const [key, value] of Object.entries(item)) {
    if (passedOver.has(key)) continue;
    const text = memberText(normal(key, value, idOf));
    if (text === undefined) continue;
    const quantity = quantities.has(key) ? parseQuantity(text).value : undefined;
    members.set(key === 'raisedBy' ? 'raised-by' : key, { text, quantity });
  }
  return members;
}

function normal(key: string, value: unknown, idOf: (id: string) => string): unknown {
  if (references.has(key)) {
    return typeof value === 'string' ? idOf(value) : strings(value).map(idOf).sort();
  }
  if (key === 'also-called') return strings(value).toSorted();
  if (key === 'raisedBy' || key === 'first') return actions(value, idOf).sort();
  return value;
}

const strings = (value: unknown): string[] =>
  Array.isArray(value) ? value.filter((one) => typeof one === 'string') : [];

function actions(value: unknown, idOf: (id: string) => string): string[] {
  if (!Array.isArray(value)) return [];
  return value.flatMap((one: unknown) => {
    if (typeof one !== 'object' || one === null || !('item' in one)) return [];
    const verb = 'verb' in one && typeof one.verb === 'string' ? `${one.verb} ` : '';
    return typeof one.item === 'string' ? [`${verb}${idOf(one.item)}`] : [];
  });
}
