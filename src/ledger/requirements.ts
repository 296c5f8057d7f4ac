import type { Verb } from '../../schemas/directives.ts';
import type { Circuit, Item, StatefulItem } from '../catalogue/index.ts';
import { type Account, type Accounts, type Counts, tally } from './account.ts';
import type { Move } from './kinds.ts';
import type { Precedence } from './precedence.ts';

/** A state that another account must not be in while an action takes place. */
export interface Requirement {
  readonly kind:
    | 'still-held'
    | 'still-connected'
    | 'blocked'
    | 'closed-over'
    | 'aid-in-way'
    | 'nothing-there'
    | 'under-pressure'
    | 'energy-live'
    | 'fill-open';
  /** The account that stands in the way. */
  readonly by: Account;
  /** True for counts that break the requirement. */
  readonly broken: (counts: Counts) => boolean;
}

/** What must hold of other accounts before a verb moves an item. */
export function requirementsFor(
  verb: Verb,
  account: Account,
  move: Move,
  precedence: Precedence,
  accounts: Accounts,
): readonly Requirement[] {
  const { item } = account;
  const need = (
    kind: Requirement['kind'],
    items: readonly StatefulItem[],
    states: (by: StatefulItem) => readonly string[],
  ) =>
    items.flatMap((one) =>
      beside(account, accounts.of(one)).map((by) => ({
        kind,
        by,
        broken: anyIn(by, states(one)),
      })),
    );
  const leaving = move.direction === 'out' || verb === 'replace';
  const returning = move.direction === 'back';
  const list: Requirement[] = [
    ...need('energy-live', precedence.isolationFor(item), () => ['live']),
    ...need('blocked', precedence.inFrontOf(item), inTheWay),
  ];
  if (item.kind === 'part') {
    if (leaving) {
      list.push(...need('still-held', precedence.holding(item), (by) => holdingStates(by)));
      if (verb !== 'set-aside')
        list.push(
          ...need('still-connected', precedence.connectionsOn(item), () => ['made', 'joined']),
        );
    }
    if (returning) {
      list.push(...need('closed-over', precedence.behind(item), awayFromHome));
      list.push(...need('aid-in-way', precedence.aidsBlocking(item), () => ['fitted']));
    }
  }
  if (returning && (item.kind === 'fastener' || item.kind === 'connection')) {
    const owners = item.kind === 'fastener' ? item.holds : item.on === undefined ? [] : [item.on];
    const away = canGoInAlone(item, verb) ? [] : precedence.entries(owners);
    // A hose reaches a part that lies aside.
    const states = item.kind === 'connection' ? ['out', 'gone'] : ['out', 'gone', 'aside'];
    list.push(...need('nothing-there', away, () => states));
  }
  for (const circuit of opened(item, move, precedence)) {
    if (!standsUnderPressure(circuit)) continue;
    const by = accounts.pressureOf(circuit);
    list.push({
      kind: 'under-pressure',
      by,
      broken: anyIn(by, ['pressurised']),
    });
  }
  if (item.kind === 'circuit' && verb === 'fill') {
    list.push(...need('fill-open', drainPoints(item, precedence), isOpenStates));
  }
  return list;
}

/** A bolt that lets go when loose can be in before the part is hung on it, though not tight. */
const canGoInAlone = (item: StatefulItem, verb: Verb): boolean =>
  item.kind === 'fastener' && item['lets-go-when'] === 'loose' && verb === 'install';

/** The test for pieces in any of some states; the same one whenever it is asked for. */
function anyIn(account: Account, states: readonly string[]): (counts: Counts) => boolean {
  const tests = known.get(account) ?? new Map<string, (counts: Counts) => boolean>();
  known.set(account, tests);
  const key = states.join();
  const test = tests.get(key) ?? ((counts) => tally(account, counts, states) > 0);
  tests.set(key, test);
  return test;
}

/** Left keeps left: of accounts with the same instances only the one of the same name counts. */
function beside({ instance }: Account, others: readonly Account[]): readonly Account[] {
  const same = others.filter(
    (other) => other.instance !== undefined && other.instance === instance,
  );
  return same.length > 0 ? same : others;
}

const known = new WeakMap<Account, Map<string, (counts: Counts) => boolean>>();

/** How many pieces must not be closed in. */
export function awayCount(account: Account, counts: Counts): number {
  return tally(account, counts, awayFromHome(account.item));
}

/** Drain points of a circuit, and whether counts mean that one lets fluid through. */
export function drainPoints(circuit: Circuit, precedence: Precedence): readonly StatefulItem[] {
  return precedence.entries(circuit.drain);
}

/** Fill points of a circuit. A point that also drains it is open or shut as the draining asks. */
export function fillPoints(circuit: Circuit, precedence: Precedence): readonly StatefulItem[] {
  return precedence.entries(circuit.fill.filter((id) => !circuit.drain.includes(id)));
}

export function isOpen(account: Account, counts: Counts): boolean {
  return tally(account, counts, isOpenStates(account.item)) > 0;
}

function standsUnderPressure(circuit: Circuit): boolean {
  return circuit.pressure !== undefined && circuit.pressure !== false;
}

function opened(item: StatefulItem, move: Move, precedence: Precedence): readonly Circuit[] {
  if (move.direction !== 'out') return [];
  return item.kind === 'circuit' ? [item] : precedence.circuitsOpenedBy(item);
}

function isOpenStates(item: Item): readonly string[] {
  switch (item.kind) {
    case 'fastener':
      return ['loose', 'out', 'gone'];
    case 'part':
      return ['out', 'gone', 'aside'];
    case 'connection':
      return ['open', 'capped'];
    case 'control':
      return item.positions.filter((position) => position !== item.home);
    default:
      return [];
  }
}

/** States in which an entry still stands in front of another. */
function inTheWay(item: StatefulItem): readonly string[] {
  switch (item.kind) {
    case 'fastener':
      return ['tight', 'snug', 'loose'];
    case 'part':
      return ['in'];
    case 'connection':
      return ['made', 'joined'];
    case 'aid':
      return ['fitted'];
    case 'control':
      return [item.home];
    default:
      return [];
  }
}

/** States in which an entry must not be closed in. */
function awayFromHome(item: StatefulItem): readonly string[] {
  switch (item.kind) {
    case 'fastener':
      return ['loose', 'out', 'gone'];
    case 'part':
      return ['aside', 'out', 'gone'];
    case 'connection':
      return ['open', 'capped'];
    default:
      return [];
  }
}

function holdingStates(item: StatefulItem): readonly string[] {
  const still = ['tight', 'snug'];
  return item.kind === 'fastener' && item['lets-go-when'] === 'loose' ? still : [...still, 'loose'];
}
