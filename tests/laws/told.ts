import { type Condition, parseCondition } from '../../src/applicability/index.ts';
import type { LedgerFact } from '../../src/ledger/index.ts';
import type { LinkedManual } from '../../src/link/index.ts';
import type { Case } from './specialise.ts';

/**
 * What a fact says, less its story and its condition, so that facts of two runs can be compared; once for each
 * instance that it is about.
 */
export function sayingsOf(fact: LedgerFact, manual: LinkedManual): readonly string[] {
  const { place, inside, instance, ...rest } = fact;
  const told: Record<string, unknown> = { ...rest };
  for (const key of story) delete told[key];
  const item = manual.procedures.get(fact.procedure)?.item(fact.item);
  const all = item !== undefined && 'each' in item ? item.each : undefined;
  const instances = instance?.split(', ') ?? all ?? [undefined];
  // Machines with the same end and different stories share one finding, at a move of one of them.
  const at = fact.kind === 'not-home' ? undefined : place.start.offset;
  return instances.map((one) =>
    inOrder({ at, inside: inside?.place.start.offset, instance: one, ...told }),
  );
}

/** As JSON, whatever the order in which the members were set. */
function inOrder(members: Readonly<Record<string, unknown>>): string {
  return JSON.stringify(
    Object.fromEntries(Object.entries(members).toSorted(([a], [b]) => (a < b ? -1 : 1))),
  );
}

const story: readonly string[] = [
  ...['when', 'since', 'story', 'closedOver', 'byPlace', 'declared', 'connectedAt', 'itemWhen'],
  'origin',
];

/** A fact of a text that others perform, and the same of each of them. */
export function unfolded({ performedBy = [], ...fact }: LedgerFact): readonly LedgerFact[] {
  return [fact, ...performedBy.map((by) => ({ ...fact, ...by }))];
}

/** Whether a fact holds for a case; undefined where its condition is only an example. */
export function holdsFor({ when }: LedgerFact, one: Case): boolean | undefined {
  if (when === undefined) return true;
  if (when.startsWith('such as')) return undefined;
  const parsed = parseCondition(when);
  if (parsed.value === undefined) throw new Error(`a condition that cannot be read: ${when}`);
  return holdsIn(parsed.value, one);
}

function holdsIn(condition: Condition, one: Case): boolean {
  switch (condition.kind) {
    case 'test': {
      const value = one.machine.get(condition.attribute.text);
      return condition.values.some(({ text }) => text === value) !== condition.negated;
    }
    case 'bare':
      return one.machine.get(condition.attribute.text) === 'yes';
    case 'found':
      return one.taken.has(condition.label);
    case 'never':
      return false;
    case 'not':
      return !holdsIn(condition.of, one);
    case 'all':
      return condition.of.every((part) => holdsIn(part, one));
    case 'any':
      return condition.of.some((part) => holdsIn(part, one));
  }
}
