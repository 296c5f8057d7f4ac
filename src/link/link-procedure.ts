import type { Place } from '../../schemas/finding.ts';
import {
  type Catalogue,
  type CatalogueFact,
  catalogueFor,
  type ManualModel,
  readOwnItems,
} from '../catalogue/index.ts';
import { locator, nearest } from '../source/index.ts';
import type { Procedure, Ref } from '../syntax/index.ts';
import type { LinkFact } from './facts.ts';
import type { LinkedProcedure } from './linked.ts';

type Facts = readonly (LinkFact | CatalogueFact)[];

/** Joins a procedure to the entries of its machine and its own. */
export function linkProcedure(
  procedure: Procedure,
  manual: ManualModel,
): { value: LinkedProcedure; facts: Facts } {
  const machine = machineOf(manual, procedure);
  const own = ownItemsOf(procedure, manual, machine.value);
  return {
    value: linked(procedure, catalogueFor(machine.value, own?.value)),
    facts: [...machine.facts, ...(own?.facts ?? [])],
  };
}

function linked(procedure: Procedure, catalogue: Catalogue): LinkedProcedure {
  const sections = new Map(procedure.sections.map((section) => [section.id, section]));
  const idOf = (ref: Ref | string): string => (typeof ref === 'string' ? ref : ref.id);
  return {
    procedure,
    catalogue,
    item: (ref) => catalogue.items.get(idOf(ref)),
    section: (ref) => sections.get(ref.id),
  };
}

function machineOf(
  manual: ManualModel,
  procedure: Procedure,
): { value: Catalogue | undefined; facts: Facts } {
  const id = procedure.front.machine;
  const known = [...manual.machines.keys()];
  const place: Place = procedure.placeOf(id === undefined ? 'procedure' : 'machine');
  if (id === undefined) {
    const only = known.length === 1 ? manual.machines.get(known[0] ?? '') : undefined;
    const at = { procedure: procedure.id, place };
    return known.length > 1
      ? { value: undefined, facts: [{ ...at, kind: 'machine-unsaid', machines: known }] }
      : { value: only, facts: [] };
  }
  const value = manual.machines.get(id);
  if (value !== undefined) return { value, facts: [] };
  return {
    value,
    facts: [
      {
        kind: 'unknown-reference',
        what: 'machine',
        procedure: procedure.id,
        place,
        id,
        owner: 'machines/',
        near: nearest(id, known),
        known,
      },
    ],
  };
}

function ownItemsOf(
  procedure: Procedure,
  manual: ManualModel,
  machine: Catalogue | undefined,
): { value: Catalogue; facts: readonly CatalogueFact[] } | undefined {
  const { items, title } = procedure.front;
  if (items === undefined) return undefined;
  const own = {
    procedure: procedure.id,
    title,
    locator: locator(procedure.file, procedure.text),
    items,
    yaml: procedure.yaml,
  };
  return readOwnItems(own, manual, machine);
}
