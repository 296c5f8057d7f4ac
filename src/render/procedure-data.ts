import type { States } from '../../schemas/front-matter.ts';
import type { ProcedureJson } from '../../schemas/procedure-json.ts';
import type { VariantSet } from '../applicability/index.ts';
import {
  boundValues,
  documentNumber,
  machineOf,
  machinesOf,
  machineWords,
  type Performs,
  valuesInText,
  type WorkTime,
} from '../derive/index.ts';
import type { LinkedManual, LinkedProcedure } from '../link/index.ts';
import { compareText } from '../source/index.ts';
import { caseData } from './case-data.ts';
import { contentData } from './content-data.ts';
import { itemData } from './item-data.ts';
import type { SheetContext } from './sheet-context.ts';

/** What is gathered over a procedure and those that it performs. */
export interface Gathered {
  readonly people: number;
  readonly times: readonly WorkTime[];
  readonly performs: Performs;
  readonly system: string;
  readonly isDraft: boolean;
}

/** A procedure for programs. */
export function procedureData(context: SheetContext, gathered: Gathered): ProcedureJson {
  const { one, manual, policy } = context;
  const { procedure } = one;
  const { front } = procedure;
  const { title, edition } = manual.manual.settings;
  const machine = machineOf(manual, one);
  const when = caseData([procedure.when], manual);
  return {
    manual: { title, ...(edition === undefined ? {} : { edition: String(edition) }) },
    ...(gathered.isDraft ? { draft: true } : {}),
    id: procedure.id,
    title: front.title,
    document: documentNumber(manual, one),
    ...(front.revision === undefined ? {} : { revision: front.revision }),
    system: gathered.system,
    ...(machine === undefined ? {} : { machine: { id: machine.id, name: machine.name } }),
    ...(when === undefined ? {} : { when }),
    ...(front.summary === undefined ? {} : { summary: valuesInText(front.summary, policy) }),
    ...(front.interval === undefined ? {} : { interval: boundValues(front.interval) }),
    people: gathered.people,
    times: timesData(gathered.times, machinesOf(one, manual), manual),
    starts: statesData(one, front.starts),
    leaves: statesData(one, front.leaves),
    sections: procedure.sections.flatMap(({ id, title, depth, blocks }) => {
      const content = contentData(blocks, context);
      if (title === undefined && content.length === 0) return [];
      return [
        { id, ...(title === undefined ? {} : { title }), depth: Math.max(1, depth), content },
      ];
    }),
    performs: gathered.performs.performs(one).map(link),
    followOn: front['follow-on'].flatMap((id) => {
      const next = manual.procedures.get(id);
      return next === undefined ? [] : [link(next)];
    }),
    history: front.history,
    sheet: 'index.html',
    pullList: 'pull-list.json',
  };
}

/** As `procedureJsonSchema` says; the same data gives the same bytes. */
export function procedureJson(data: ProcedureJson): string {
  return `${JSON.stringify(data, undefined, 2)}\n`;
}

const link = ({ procedure }: LinkedProcedure) => ({
  id: procedure.id,
  title: procedure.front.title,
});

function timesData(
  times: readonly WorkTime[],
  scope: VariantSet,
  { manual }: LinkedManual,
): ProcedureJson['times'] {
  return times
    .filter(({ duration }) => duration.work + duration.waits > 0)
    .map(({ under, duration }) => {
      const machines = machineWords(under, scope, manual);
      return {
        elapsed: minutes(duration.elapsed),
        work: minutes(duration.work),
        waits: minutes(duration.waits),
        ...(duration.isWhole ? {} : { atLeast: true }),
        ...(machines === undefined ? {} : { machines }),
      };
    });
}

/** Sums of times in other units than minutes may come out a hair off. */
const minutes = (value: number) =>
  ({ form: 'single', value: Math.round(value * 1e6) / 1e6, unit: 'min' }) as const;

function statesData(one: LinkedProcedure, states: States): ProcedureJson['starts'] {
  return Object.keys(states)
    .sort(compareText)
    .flatMap((id) => {
      const state = states[id];
      return state === undefined ? [] : [{ ...itemData({ id }, one), state }];
    });
}
