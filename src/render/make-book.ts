import type { Report } from '../../schemas/report.ts';
import {
  documentNumber,
  performsOf,
  type StepNumbers,
  stepNumbers,
  systemsOf,
  whereUsed,
} from '../derive/index.ts';
import type { LinkedManual, LinkedProcedure } from '../link/index.ts';
import { compareText } from '../source/index.ts';
import type { Book } from './book.ts';
import { allFigureRows, figureTables } from './figure-rows.ts';
import { figuresOf } from './figures.ts';
import { machinePage } from './machine-page.ts';
import { sheetMaker } from './sheet.ts';
import type { ManualContext } from './sheet-context.ts';
import { standingText } from './standing-text.ts';

/** Everything that the site shows, made from a linked manual. Same input, same bytes. */
export function makeBook(
  manual: LinkedManual,
  report: Report,
  { draft }: { draft: boolean },
): Book {
  const { settings, policy, machines } = manual.manual;
  const systems = systemsOf(manual);
  const context = manualContext(manual);
  const usesOf = whereUsed(manual);
  const tables = figureTables(manual.manual, usesOf);
  const names = new Map(
    systems.flatMap(({ name, procedures }) => procedures.map((one) => [one, name])),
  );
  const sheet = sheetMaker({
    context,
    tables,
    performs: performsOf(manual),
    systemOf: (one) => names.get(one) ?? '',
  });
  return {
    title: settings.title,
    language: settings.language,
    edition: settings.edition === undefined ? undefined : String(settings.edition),
    issued: settings.issued,
    publisher: settings.publisher,
    address: settings.address,
    draft,
    safetyHtml:
      settings.safety === undefined
        ? ''
        : standingText(settings.safety, manual.manual.placeOf('safety'), policy),
    systems: systems.map(({ name, procedures }) => ({
      name,
      sheets: procedures.map((one) => one.procedure.id),
    })),
    sheets: systems.flatMap(({ procedures }) => procedures.map(sheet)),
    machines: [...machines.values()]
      .sort((a, b) => compareText(a.id, b.id))
      .map((machine) => machinePage(machine, usesOf, context)),
    ...allFigureRows(manual, tables),
    figures: figuresOf(manual),
    report,
  };
}

function manualContext(manual: LinkedManual): ManualContext {
  const numbers = new Map<LinkedProcedure, StepNumbers>();
  const byFile = new Map([...manual.procedures.values()].map((one) => [one.procedure.file, one]));
  return {
    manual,
    policy: manual.manual.policy,
    base: '../../',
    numbersOf: (one) => {
      const known = numbers.get(one) ?? stepNumbers(one.procedure);
      numbers.set(one, known);
      return known;
    },
    documentNumber: (one) => documentNumber(manual, one),
    procedureInFile: (path) => byFile.get(path),
  };
}
