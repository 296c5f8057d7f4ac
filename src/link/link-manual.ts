import type { Place } from '../../schemas/finding.ts';
import {
  type Catalogue,
  type CatalogueFact,
  catalogueFor,
  type ManualModel,
  readOwnItems,
} from '../catalogue/index.ts';
import { compareText, locator, type ManualFiles, nearest } from '../source/index.ts';
import type { Procedure, Ref } from '../syntax/index.ts';
import { checkConditions } from './check-conditions.ts';
import { checkEntryFigures, checkFigures, pictureSizes } from './check-figures.ts';
import { checkLinks } from './check-links.ts';
import { checkReferences } from './check-references.ts';
import type { LinkFact } from './facts.ts';
import type { LinkedManual, LinkedProcedure } from './linked.ts';

/** Joins procedures to their machine's entries and to each other. The first of two procedures with one id wins. */
export function linkManual(
  manual: ManualModel,
  procedures: readonly Procedure[],
  files: ManualFiles,
): { value: LinkedManual; facts: readonly (LinkFact | CatalogueFact)[] } {
  const facts: (LinkFact | CatalogueFact)[] = [];
  const byId = new Map<string, LinkedProcedure>();
  const inOrder = [...procedures].sort(
    (a, b) => compareText(a.id, b.id) || compareText(a.file, b.file),
  );
  for (const procedure of inOrder) {
    const first = byId.get(procedure.id);
    if (first !== undefined) {
      facts.push({
        kind: 'duplicate-procedure',
        procedure: procedure.id,
        place: procedure.placeOf('procedure'),
        id: procedure.id,
        first: first.procedure.placeOf('procedure'),
      });
      continue;
    }
    const machine = machineOf(manual, procedure, facts);
    const own = ownItemsOf(procedure, manual, machine, facts);
    byId.set(procedure.id, linked(procedure, catalogueFor(machine, own)));
  }
  const value: LinkedManual = { manual, procedures: byId, pictures: pictureSizes(files) };
  for (const one of byId.values()) {
    facts.push(
      ...checkReferences(one, value),
      ...checkLinks(one, value),
      ...checkFigures(one, files),
      ...checkConditions(one.procedure, manual.space),
    );
  }
  facts.push(...checkEntryFigures(value, files));
  return { value, facts };
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
  facts: (LinkFact | CatalogueFact)[],
): Catalogue | undefined {
  const id = procedure.front.machine;
  const known = [...manual.machines.keys()];
  const place: Place = procedure.placeOf(id === undefined ? 'procedure' : 'machine');
  if (id === undefined) {
    if (known.length > 1)
      facts.push({ kind: 'machine-unsaid', procedure: procedure.id, place, machines: known });
    return known.length === 1 ? manual.machines.get(known[0] ?? '') : undefined;
  }
  const machine = manual.machines.get(id);
  if (machine === undefined) {
    facts.push({
      kind: 'unknown-reference',
      what: 'machine',
      procedure: procedure.id,
      place,
      id,
      owner: 'machines/',
      near: nearest(id, known),
      known,
    });
  }
  return machine;
}

function ownItemsOf(
  procedure: Procedure,
  manual: ManualModel,
  machine: Catalogue | undefined,
  facts: (LinkFact | CatalogueFact)[],
): Catalogue | undefined {
  const { items, title } = procedure.front;
  if (items === undefined) return undefined;
  const own = {
    procedure: procedure.id,
    title,
    locator: locator(procedure.file, procedure.text),
    items,
    yaml: procedure.yaml,
  };
  const read = readOwnItems(own, manual, machine);
  facts.push(...read.facts);
  return read.value;
}
