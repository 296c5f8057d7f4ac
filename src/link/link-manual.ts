import type { CatalogueFact, ManualModel } from '../catalogue/index.ts';
import type { ManualFiles } from '../source/index.ts';
import type { Procedure } from '../syntax/index.ts';
import { type Assets, assetsOf } from './assets.ts';
import { checkConditions } from './check-conditions.ts';
import { checkEntryFigures, checkFigures } from './check-figures.ts';
import { checkLinks } from './check-links.ts';
import { checkReferences } from './check-references.ts';
import type { LinkFact } from './facts.ts';
import { linkProcedure } from './link-procedure.ts';
import type { LinkedManual, LinkedProcedure } from './linked.ts';
import { outlineOf } from './outline.ts';
import { Outlines } from './outlines.ts';

type Facts = readonly (LinkFact | CatalogueFact)[];

/** Joins procedures to their machine's entries and to each other. The first of two procedures with one id wins. */
export function linkManual(
  manual: ManualModel,
  procedures: readonly Procedure[],
  files: ManualFiles,
): { value: LinkedManual; facts: Facts } {
  const assets = assetsOf(files);
  const outlines = new Outlines(procedures.map(outlineOf));
  const byFile = new Map(procedures.map((procedure) => [procedure.file, procedure]));
  const facts: (LinkFact | CatalogueFact)[] = [...outlines.facts];
  const byId = new Map<string, LinkedProcedure>();
  for (const { id, file } of outlines.byId.values()) {
    const procedure = byFile.get(file);
    if (procedure === undefined) continue;
    const one = linkProcedure(procedure, manual);
    byId.set(id, one.value);
    facts.push(...one.facts);
  }
  const value = { manual, procedures: byId, outlines, pictures: assets.sizes };
  for (const one of byId.values()) facts.push(...linkFacts(one, value, assets));
  for (const machine of manual.machines.values()) facts.push(...checkEntryFigures(machine, assets));
  return { value, facts };
}

/** What is wrong with the references of one procedure. */
export function linkFacts(one: LinkedProcedure, manual: LinkedManual, assets: Assets): Facts {
  return [
    ...checkReferences(one, manual),
    ...checkLinks(one, manual),
    ...checkFigures(one, assets),
    ...checkConditions(one.procedure, manual.manual.space),
  ];
}
