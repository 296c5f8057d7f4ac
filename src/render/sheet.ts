import type { States } from '../../schemas/front-matter.ts';
import { machineCondition, type VariantSet } from '../applicability/index.ts';
import {
  boundValues,
  bySeverity,
  conditionWords,
  crew,
  gatherer,
  type HazardWords,
  handledCircuits,
  hazardKey,
  hazardsAtAGlance,
  isContract,
  machineOf,
  machinesOf,
  machineWords,
  ownerOf,
  type Performs,
  type PullKind,
  PullLister,
  setCondition,
  stateWords,
  torquedItems,
  valuesInText,
  wasteOf,
  workTimes,
} from '../derive/index.ts';
import type { LinkedManual, LinkedProcedure } from '../link/index.ts';
import { addressCode, pageAddress } from './address-code.ts';
import type { HazardLine, Sheet, StateLine } from './book.ts';
import type { FigureTables } from './figure-rows.ts';
import { avoidance } from './hazard-panel.ts';
import { howTo, howToText } from './how-to.ts';
import { lazily } from './lazily.ts';
import { once } from './once.ts';
import { orderPicture } from './order-picture.ts';
import { crewLines, spanText, timeLines } from './people-and-time.ts';
import { procedureData, procedureJson } from './procedure-data.ts';
import { pullFiles } from './pull-files.ts';
import { pullRow } from './pull-row.ts';
import { sheetBody, sheetContext } from './sheet-body.ts';
import type { ManualContext, SheetContext } from './sheet-context.ts';
import { sheetsAtHand } from './sheets-at-hand.ts';
import { stepCount } from './shown-when.ts';
import {
  hazardsHref,
  itemLink,
  machineHref,
  procedureDataHref,
  procedureHref,
  procedureLink,
  stepAnchor,
} from './site-links.ts';
import { toHtml } from './to-html.ts';
import { unended } from './unended.ts';

/** What the sheets of a manual are made from beside their own text. */
export interface SheetSources {
  readonly context: ManualContext;
  readonly tables: FigureTables;
  readonly performs: Performs;
  /** Ids of the rows of the page of hazards, by `hazardKey`. */
  readonly hazardRows: ReadonlyMap<string, string>;
  readonly systemOf: (one: LinkedProcedure) => string;
  readonly isDraft: boolean;
}

/**
 * Makes the sheets of one manual, each part when it is first read; each procedure is gathered once, however often
 * it is performed.
 */
export function sheetMaker(sources: SheetSources): (one: LinkedProcedure) => Sheet {
  const { context, tables, performs } = sources;
  const { manual } = context;
  const gathered = {
    hazards: gatherer(manual, hazardsAtAGlance(manual.manual.space)),
    torques: gatherer(manual, torquedItems(manual.manual.space)),
    circuits: gatherer(manual, handledCircuits(manual.manual.space)),
    crew: gatherer(manual, crew(manual.manual.space)),
    times: workTimes(manual),
  };
  const contexts = new Map<LinkedProcedure, SheetContext>();
  const glance = (one: LinkedProcedure): SheetContext => {
    const known = contexts.get(one) ?? sheetContext(one, context, 'glance-');
    contexts.set(one, known);
    return known;
  };
  const pulls = new PullLister(manual);
  return (one) => {
    const { procedure } = one;
    const { front } = procedure;
    const sheet = once(() => sheetContext(one, context));
    const list = once(() => pulls.list([procedure.id]).value);
    const pulled =
      (...kinds: readonly PullKind[]) =>
      () =>
        list()
          .lines.filter(({ kind }) => kinds.includes(kind))
          .map((line) => pullRow(line, context));
    const scope = once(() => machinesOf(one, manual));
    const { space } = manual.manual;
    const whenOf = (under: VariantSet) => ({
      when: machineWords(under, scope(), manual.manual),
      condition: setCondition(under, scope(), space),
    });
    const rowOf = (words: HazardWords) => {
      const anchor = sources.hazardRows.get(hazardKey(words));
      return anchor === undefined ? undefined : `${hazardsHref}#${anchor}`;
    };
    const stepLink = (text: string) => ({
      href: `${procedureHref(procedure.id)}#${stepAnchor(text)}`,
      text,
    });
    const system = sources.systemOf(one);
    const times = once(() => gathered.times(one));
    const data = once(() =>
      procedureData(sheetContext(one, context, 'data-'), {
        people: gathered.crew(one).people,
        times: times(),
        performs,
        system,
        isDraft: sources.isDraft,
      }),
    );
    return lazily<Sheet>({
      id: () => procedure.id,
      href: () => procedureHref(procedure.id),
      title: () => front.title,
      system: () => system,
      documentNumber: () => context.documentNumber(one),
      revision: () => front.revision,
      machine: () => {
        const machine = machineOf(manual, one);
        return machine && { href: machineHref(machine.id), text: machine.name };
      },
      variants: () =>
        procedure.when && conditionWords(procedure.when.condition, manual.manual.settings.variants),
      condition: () => sheet().presence.when(procedure.when),
      summary: () => front.summary && valuesInText(front.summary, context.policy),
      interval: () => front.interval && boundValues(front.interval),
      people: () => gathered.crew(one).people,
      crew: () =>
        crewLines(gathered.crew(one).crewed, scope(), manual.manual, sheet().numbers, stepLink),
      time: () => spanText(times()),
      times: () => timeLines(times(), scope(), manual.manual),
      steps: () => sheet().numbers.total(),
      stepCount: () => stepCount(sheet().presence.firstRank(procedure.sections)),
      codeHtml: () => codeOf(manual, procedure.id),
      orderHtml: () => toHtml(orderPicture(one)),
      bodyHtml: () => toHtml(sheetBody(sheet())),
      hazards: () =>
        bySeverity(gathered.hazards(one)).map(({ words, under }): HazardLine => {
          const { signal } = words;
          const hazard = unended(valuesInText(words.hazard, context.policy));
          const harm = unended(valuesInText(words.harm, context.policy));
          const avoidHtml = toHtml(avoidance(words, glance(words.one)));
          return { signal, hazard, harm, avoidHtml, row: rowOf(words), ...whenOf(under) };
        }),
      tools: pulled('tool', 'aid'),
      parts: pulled('part', 'fastener'),
      consumables: pulled('consumable'),
      fluidPulls: pulled('fluid'),
      pullFiles: () => pullFiles(list(), procedure.id, manual),
      dataFile: () => ({
        href: procedureDataHref(procedure.id),
        text: 'JSON',
        content: procedureJson(data()),
      }),
      howTo: () => howToText(howTo(data(), list(), manual.manual.settings)),
      fluids: () =>
        [...gathered.circuits(one)].map(([item, from]) => ({
          ...tables.fluidRow(item, ownerOf(manual, from.one, item)),
          ...whenOf(from.under),
        })),
      waste: () =>
        wasteOf(one, manual, context.policy).map(({ circuit, volume }) => ({
          item: itemLink(circuit, ownerOf(manual, one, circuit)),
          volume,
          dispose: circuit.dispose && valuesInText(circuit.dispose, context.policy),
        })),
      torques: () =>
        [...gathered.torques(one)].map(([item, from]) => ({
          ...tables.torqueRow(item, ownerOf(manual, from.one, item)),
          ...whenOf(from.under),
        })),
      starts: () => stateLines(manual, one, front.starts),
      leaves: () => stateLines(manual, one, front.leaves),
      performs: () =>
        sheetsAtHand(sheet()).map(({ target, condition }) => ({
          ...procedureLink(target),
          condition,
        })),
      followOn: () =>
        front['follow-on'].flatMap((id) => {
          const next = manual.procedures.get(id);
          return next === undefined ? [] : [procedureLink(next)];
        }),
      performedBy: () => performs.performedBy(one).map(procedureLink),
      isContract: () => isContract(one),
      history: () => front.history,
    });
  };
}

function codeOf({ manual }: LinkedManual, id: string): string {
  const { address } = manual.settings;
  return address === undefined
    ? ''
    : toHtml([addressCode(pageAddress(address, procedureHref(id)))]);
}

function stateLines(manual: LinkedManual, one: LinkedProcedure, states: States): StateLine[] {
  return stateWords(one, states).map(({ item, id, state }) => ({
    item:
      item === undefined
        ? { href: procedureHref(one.procedure.id), text: id }
        : itemLink(item, ownerOf(manual, one, item)),
    state,
    condition: machineCondition(item?.when, manual.manual.space),
  }));
}
