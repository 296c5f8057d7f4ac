import type { Report } from '../../schemas/report.ts';
import { performsOf, systemsOf, whereUsed } from '../derive/index.ts';
import type { LinkedManual } from '../link/index.ts';
import { compareText } from '../source/index.ts';
import type { BookFrame, MachinePage, PageLink, Sheet } from './book.ts';
import { allFigureRows, figureTables } from './figure-rows.ts';
import { figuresOf } from './figures.ts';
import { hazardPages } from './hazard-rows.ts';
import { lazily } from './lazily.ts';
import { machineChoice } from './machine-choice.ts';
import { machinePage } from './machine-page.ts';
import { manualContext } from './manual-context.ts';
import { once } from './once.ts';
import { ruleLines } from './rule-lines.ts';
import { sheetMaker } from './sheet.ts';
import { machineHref } from './site-links.ts';
import { standingText } from './standing-text.ts';
import { stockOf } from './stock-rows.ts';

/** A Book of which each part is made when it is first read, so that one page costs no more than what it shows. */
export interface OpenBook {
  readonly frame: BookFrame;
  /** In the order of the contents page. */
  sheets(): readonly Sheet[];
  sheet(id: string): Sheet | undefined;
  machines(): readonly MachinePage[];
  machine(id: string): MachinePage | undefined;
  /** The pages of the machines, in their order. */
  readonly machineLinks: readonly PageLink[];
}

/** Opens the book of a linked manual. What is read of it, in whatever order, is what `makeBook` gives. */
export function openBook(
  manual: LinkedManual,
  report: Report,
  { draft }: { draft: boolean },
): OpenBook {
  const { settings, policy } = manual.manual;
  const systems = systemsOf(manual);
  const context = manualContext(manual, '../../');
  const usesOf = once(() => whereUsed(manual));
  const tables = figureTables(manual.manual, (item) => usesOf()(item));
  const hazards = once(() => hazardPages(context));
  const rows = once(() => allFigureRows(manual, tables));
  const names = new Map(
    systems.flatMap(({ name, procedures }) => procedures.map((one) => [one, name])),
  );
  const makeSheet = once(() =>
    sheetMaker({
      context,
      tables,
      hazardRows: hazards().anchorOf,
      performs: performsOf(manual),
      systemOf: (one) => names.get(one) ?? '',
      isDraft: draft,
    }),
  );
  const sheet = kept((id) => {
    const one = manual.procedures.get(id);
    return one && makeSheet()(one);
  });
  const machines = [...manual.manual.machines.values()].sort((a, b) => compareText(a.id, b.id));
  const machine = kept((id) => {
    const one = manual.manual.machines.get(id);
    return one && machinePage(one, usesOf(), context);
  });
  const frame = lazily<BookFrame>({
    title: () => settings.title,
    language: () => settings.language,
    edition: () => (settings.edition === undefined ? undefined : String(settings.edition)),
    issued: () => settings.issued,
    publisher: () => settings.publisher,
    address: () => settings.address,
    draft: () => draft,
    safetyHtml: () => standingText(settings.safety, manual.manual.placeOf('safety'), policy),
    systems: () =>
      systems.map(({ name, procedures }) => ({
        name,
        sheets: procedures.map((one) => one.procedure.id),
      })),
    torques: () => rows().torques,
    fluids: () => rows().fluids,
    hazards: () => hazards().rows(),
    stock: () => stockOf(usesOf(), context),
    rules: () => ruleLines,
    machinesDiffer: () => machineChoice(manual.manual),
    figures: () => figuresOf(manual),
    report: () => report,
  });
  return {
    frame,
    sheets: once(() =>
      systems.flatMap(({ procedures }) =>
        procedures.flatMap((one) => sheet(one.procedure.id) ?? []),
      ),
    ),
    sheet,
    machines: once(() => machines.flatMap(({ id }) => machine(id) ?? [])),
    machine,
    machineLinks: machines.map(({ id, name }) => ({ href: machineHref(id), text: name })),
  };
}

/** What is found under an id, made once. */
function kept<T>(find: (id: string) => T | undefined): (id: string) => T | undefined {
  const known = new Map<string, T | undefined>();
  return (id) => {
    if (!known.has(id)) known.set(id, find(id));
    return known.get(id);
  };
}
