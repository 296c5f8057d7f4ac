import type { Report } from '../../schemas/report.ts';
import { performsOf, systemsOf, whereUsed } from '../derive/index.ts';
import type { LinkedManual } from '../link/index.ts';
import { compareText } from '../source/index.ts';
import type { Book } from './book.ts';
import { allFigureRows, figureTables } from './figure-rows.ts';
import { figuresOf } from './figures.ts';
import { hazardPages } from './hazard-rows.ts';
import { machineChoice } from './machine-choice.ts';
import { machinePage } from './machine-page.ts';
import { manualContext } from './manual-context.ts';
import { ruleLines } from './rule-lines.ts';
import { sheetMaker } from './sheet.ts';
import { standingText } from './standing-text.ts';
import { stockOf } from './stock-rows.ts';

/** Everything that the site shows, made from a linked manual. Same input, same bytes. */
export function makeBook(
  manual: LinkedManual,
  report: Report,
  { draft }: { draft: boolean },
): Book {
  const { settings, policy, machines } = manual.manual;
  const systems = systemsOf(manual);
  const context = manualContext(manual, '../../');
  const usesOf = whereUsed(manual);
  const tables = figureTables(manual.manual, usesOf);
  const names = new Map(
    systems.flatMap(({ name, procedures }) => procedures.map((one) => [one, name])),
  );
  const hazards = hazardPages(context);
  const sheet = sheetMaker({
    context,
    tables,
    hazardRows: hazards.anchorOf,
    performs: performsOf(manual),
    systemOf: (one) => names.get(one) ?? '',
    isDraft: draft,
  });
  return {
    title: settings.title,
    language: settings.language,
    edition: settings.edition === undefined ? undefined : String(settings.edition),
    issued: settings.issued,
    publisher: settings.publisher,
    address: settings.address,
    draft,
    safetyHtml: standingText(settings.safety, manual.manual.placeOf('safety'), policy),
    systems: systems.map(({ name, procedures }) => ({
      name,
      sheets: procedures.map((one) => one.procedure.id),
    })),
    sheets: systems.flatMap(({ procedures }) => procedures.map(sheet)),
    machines: [...machines.values()]
      .sort((a, b) => compareText(a.id, b.id))
      .map((machine) => machinePage(machine, usesOf, context)),
    ...allFigureRows(manual, tables),
    hazards: hazards.rows,
    stock: stockOf(usesOf, context),
    rules: ruleLines,
    machinesDiffer: machineChoice(manual.manual),
    figures: figuresOf(manual),
    report,
  };
}
