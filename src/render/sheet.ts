import type { States } from '../../schemas/front-matter.ts';
import { pluralName } from '../catalogue/index.ts';
import {
  boundValues,
  bySeverity,
  conditionWords,
  consumablesToPull,
  gatherer,
  handledCircuits,
  hazardsAtAGlance,
  isContract,
  itemName,
  machineOf,
  ownerOf,
  type Performs,
  type Pull,
  partPulls,
  partsToPull,
  people,
  pullsOf,
  stateWords,
  strengthOf,
  timeText,
  toolsToPull,
  torquedItems,
  valuesInText,
  workTime,
} from '../derive/index.ts';
import type { LinkedManual, LinkedProcedure } from '../link/index.ts';
import { printByPolicy } from '../quantity/index.ts';
import type { HazardLine, PullRow, Sheet, StateLine } from './book.ts';
import type { FigureTables } from './figure-rows.ts';
import { avoidance } from './hazard-panel.ts';
import { sheetBody, sheetContext } from './sheet-body.ts';
import type { ManualContext, SheetContext } from './sheet-context.ts';
import { itemLink, machineHref, procedureHref, procedureLink } from './site-links.ts';
import { toHtml } from './to-html.ts';

/** What the sheets of a manual are made from beside their own text. */
export interface SheetSources {
  readonly context: ManualContext;
  readonly tables: FigureTables;
  readonly performs: Performs;
  readonly systemOf: (one: LinkedProcedure) => string;
}

/** Makes the sheets of one manual; each procedure is gathered once, however often it is performed. */
export function sheetMaker(sources: SheetSources): (one: LinkedProcedure) => Sheet {
  const { context, tables, performs } = sources;
  const { manual } = context;
  const gathered = {
    hazards: gatherer(manual, hazardsAtAGlance),
    tools: gatherer(manual, toolsToPull),
    consumables: gatherer(manual, consumablesToPull),
    parts: gatherer(manual, partsToPull),
    torques: gatherer(manual, torquedItems),
    circuits: gatherer(manual, handledCircuits),
    people: gatherer(manual, people),
    time: gatherer(manual, workTime),
  };
  const contexts = new Map<LinkedProcedure, SheetContext>();
  const glance = (one: LinkedProcedure): SheetContext => {
    const known = contexts.get(one) ?? sheetContext(one, context, 'glance-');
    contexts.set(one, known);
    return known;
  };
  const pullRow =
    (variants: string | undefined) =>
    (pull: Pull): PullRow => {
      const { when } = pull.item;
      const words = when && conditionWords(when, manual.manual.settings.variants);
      return {
        item: itemLink(pull.item, ownerOf(manual, pull.one, pull.item), nameOf(pull)),
        count: pull.count,
        detail: detailOf(pull, context),
        when: words === variants ? undefined : words,
      };
    };
  return (one) => {
    const { procedure } = one;
    const { front } = procedure;
    const sheet = sheetContext(one, context);
    const machine = machineOf(manual, one);
    const variants =
      procedure.when && conditionWords(procedure.when.condition, manual.manual.settings.variants);
    const row = pullRow(variants);
    return {
      id: procedure.id,
      href: procedureHref(procedure.id),
      title: front.title,
      system: sources.systemOf(one),
      documentNumber: context.documentNumber(one),
      revision: front.revision,
      machine: machine && { href: machineHref(machine.id), text: machine.name },
      variants,
      summary: front.summary && valuesInText(front.summary, context.policy),
      interval: front.interval && boundValues(front.interval),
      people: gathered.people(one),
      time: timeText(gathered.time(one)),
      steps: sheet.numbers.total(),
      bodyHtml: toHtml(sheetBody(sheet)),
      hazards: bySeverity(gathered.hazards(one)).map((words): HazardLine => {
        const { signal } = words;
        const hazard = unended(valuesInText(words.hazard, context.policy));
        const harm = unended(valuesInText(words.harm, context.policy));
        return { signal, hazard, harm, avoidHtml: toHtml(avoidance(words, glance(words.one))) };
      }),
      tools: pullsOf(gathered.tools(one)).map(row),
      parts: partPulls(gathered.parts(one)).map(row),
      consumables: pullsOf(gathered.consumables(one)).map(row),
      fluids: [...gathered.circuits(one)].map(([item, from]) =>
        tables.fluidRow(item, ownerOf(manual, from, item)),
      ),
      torques: [...gathered.torques(one)].map(([item, from]) =>
        tables.torqueRow(item, ownerOf(manual, from, item)),
      ),
      starts: stateLines(manual, one, front.starts),
      leaves: stateLines(manual, one, front.leaves),
      performs: performs.performs(one).map(procedureLink),
      performedBy: performs.performedBy(one).map(procedureLink),
      isContract: isContract(one),
      history: front.history,
    };
  };
}

/** Hazard and harm as phrases: whoever shows them ends the sentence. */
const unended = (text: string): string => text.trim().replace(/\.$/, '');

function stateLines(manual: LinkedManual, one: LinkedProcedure, states: States): StateLine[] {
  return stateWords(one, states).map(({ item, id, state }) => ({
    item:
      item === undefined
        ? { href: procedureHref(one.procedure.id), text: id }
        : itemLink(item, ownerOf(manual, one, item)),
    state,
  }));
}

function nameOf({ item, named, count }: Pull): string {
  if (named === undefined) return itemName(item, count ?? 1);
  return count === 1 ? named : pluralName(named);
}

function detailOf({ item, named, count }: Pull, { policy }: ManualContext): string | undefined {
  if (named !== undefined) return `with ${itemName(item, count)}`;
  switch (item.kind) {
    case 'tool':
      return item.size && boundValues(item.size);
    case 'consumable':
      return item.specification && boundValues(item.specification);
    case 'circuit':
      return listed(item.fluid, item.capacity && printByPolicy(item.capacity, policy));
    case 'fastener':
      return listed(item.thread, strengthOf(item), item['part-number']);
    case 'part':
      return item['part-number'];
    default:
      return undefined;
  }
}

function listed(...told: readonly (string | undefined)[]): string | undefined {
  return told.filter(Boolean).join(', ') || undefined;
}
