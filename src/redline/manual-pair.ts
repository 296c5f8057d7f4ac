import type { Catalogue, Item } from '../catalogue/index.ts';
import { machineOf } from '../derive/index.ts';
import type { LinkedManual, LinkedProcedure } from '../link/index.ts';
import { ConditionComparer } from './conditions.ts';
import { type Names, renamed } from './names.ts';
import { type Pairing, pairEntries, pairUnique } from './pair-entries.ts';

/** Entries of a machine, or those that a procedure brings along, before and after. */
export interface EntriesPair {
  /** Id of the machine after; undefined for the entries of a procedure. */
  readonly machine: string | undefined;
  /** Id of the procedure after; undefined for the entries of a machine. */
  readonly procedure: string | undefined;
  readonly entries: Pairing<Item>;
  /** What an id of the entries before is called after. */
  readonly idOf: (id: string) => string;
}

/** Two manuals, with what in the one is what in the other. */
export interface ManualPair {
  readonly before: LinkedManual;
  readonly after: LinkedManual;
  readonly machines: Pairing<Catalogue>;
  readonly procedures: Pairing<LinkedProcedure>;
  readonly entries: readonly EntriesPair[];
  readonly conditions: ConditionComparer;
  /** Names in the text of a procedure before. */
  readonly namesIn: (before: LinkedProcedure) => Names;
}

/** Finds what has kept its id, and what has got another one. */
export function pairManuals(before: LinkedManual, after: LinkedManual): ManualPair {
  const machines = pairMachines(before, after);
  const procedures = pairProcedures(before, after);
  const ofMachines = new Map(machines.pairs.map(([one, other]) => [one, entriesOf(one, other)]));
  const own = new Map(
    procedures.pairs.map(([one, other]) => {
      const around = machineOf(before, one);
      const entries = around === undefined ? undefined : ofMachines.get(around);
      const items = pairEntries(ownItems(before, one), ownItems(after, other));
      const ids = idsOf(items);
      const idOf = (id: string): string => ids.get(id) ?? entries?.idOf(id) ?? id;
      const { id } = other.procedure;
      return [one, { machine: undefined, procedure: id, entries: items, idOf }] as const;
    }),
  );
  const called = renamed(
    new Map(procedures.pairs.map(([one, other]) => [one.procedure.id, other.procedure.id])),
  );
  const sections = new Map(
    procedures.pairs.map(([one, other]) => [other.procedure.id, sectionIds(one, other)]),
  );
  return {
    before,
    after,
    machines,
    procedures,
    entries: [...ofMachines.values(), ...own.values()],
    conditions: new ConditionComparer(before.manual, after.manual),
    namesIn: (one) => ({
      item: own.get(one)?.idOf ?? ((id) => id),
      procedure: called,
      section: (id, procedure = called(one.procedure.id)) => sections.get(procedure)?.get(id) ?? id,
      step: (id) => id,
    }),
  };
}

function entriesOf(one: Catalogue, other: Catalogue): EntriesPair {
  const entries = pairEntries(one.items, other.items);
  return { machine: other.id, procedure: undefined, entries, idOf: renamed(idsOf(entries)) };
}

const idsOf = ({ pairs }: Pairing<Item>): ReadonlyMap<string, string> =>
  new Map(pairs.map(([one, other]) => [one.id, other.id]));

/** By id; of the others, one that has the name of one new machine. */
function pairMachines(before: LinkedManual, after: LinkedManual): Pairing<Catalogue> {
  const [old, now] = [before.manual.machines, after.manual.machines];
  return byId(old, now, ({ name }) => [name]);
}

/** By id; of the others, one that stands in the same file, else one of the same title. */
function pairProcedures(before: LinkedManual, after: LinkedManual): Pairing<LinkedProcedure> {
  return byId(before.procedures, after.procedures, ({ procedure }) => [
    procedure.file,
    `title ${procedure.front.title}`,
  ]);
}

/** By id, then by each of some keys in turn, where only one on each side has it. */
function byId<T extends object>(
  before: ReadonlyMap<string, T>,
  after: ReadonlyMap<string, T>,
  keysOf: (one: T) => readonly string[],
): Pairing<T> {
  const pairs = [...before].flatMap(([id, one]) => {
    const other = after.get(id);
    return other === undefined ? [] : [[one, other] as const];
  });
  let rest: Pairing<T> = {
    pairs,
    gone: [...before].flatMap(([id, one]) => (after.has(id) ? [] : [one])),
    fresh: [...after].flatMap(([id, one]) => (before.has(id) ? [] : [one])),
  };
  const [example] = [...rest.gone, ...rest.fresh];
  for (let i = 0; example !== undefined && i < keysOf(example).length; i += 1) {
    const next = pairUnique(rest.gone, rest.fresh, (one) => keysOf(one)[i] ?? '');
    rest = { ...next, pairs: [...rest.pairs, ...next.pairs] };
  }
  return rest;
}

/** Entries that a procedure brings along for itself. */
function ownItems(manual: LinkedManual, one: LinkedProcedure): ReadonlyMap<string, Item> {
  const machine = machineOf(manual, one);
  if (machine === undefined) return one.catalogue.items;
  return new Map([...one.catalogue.items].filter(([id, item]) => machine.items.get(id) !== item));
}

/** Headings that were worded otherwise: of those that have no counterpart, as many on both sides, in their order. */
function sectionIds(one: LinkedProcedure, other: LinkedProcedure): ReadonlyMap<string, string> {
  const idsIn = ({ procedure }: LinkedProcedure): string[] =>
    procedure.sections.flatMap(({ id, title }) => (title === undefined ? [] : [id]));
  const [old, now] = [idsIn(one), idsIn(other)];
  const gone = old.filter((id) => !now.includes(id));
  const fresh = now.filter((id) => !old.includes(id));
  if (gone.length !== fresh.length) return new Map();
  return new Map(gone.map((id, i) => [id, fresh[i] ?? id]));
}
