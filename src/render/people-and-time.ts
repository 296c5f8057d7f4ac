import type { VariantSet } from '../applicability/index.ts';
import type { ManualModel } from '../catalogue/index.ts';
import {
  type Crewed,
  type Duration,
  machineWords,
  minutesText,
  type StepNumbers,
  setCondition,
  type WorkPlace,
  type WorkTime,
} from '../derive/index.ts';
import type { CrewLine, PageLink, TimeLine } from './book.ts';

/** More kinds of machine than this are told by the shortest and the longest time only. */
const mostLines = 3;

/** How long a job takes, one line for each time with the machines on which it takes that long. */
export function timeLines(
  times: readonly WorkTime[],
  scope: VariantSet,
  manual: ManualModel,
): readonly TimeLine[] {
  const told = times.filter(({ duration }) => duration.work + duration.waits > 0);
  if (told.length === 0) return [];
  if (times.length > mostLines) {
    return [{ total: spanText(times) ?? '', parts: 'by variant', when: undefined }];
  }
  return told.map(({ under, duration }) => ({
    total: totalText(duration) ?? '',
    parts: partsText(duration),
    when: machineWords(under, scope, manual),
    condition: setCondition(under, scope, manual.space),
  }));
}

/** From start to end: "1 h 5 min", "45 min to 1 h 10 min" where it differs; undefined where no step has a time. */
export function spanText(times: readonly WorkTime[]): string | undefined {
  const sorted = times.map(({ duration }) => duration).sort((a, b) => a.elapsed - b.elapsed);
  const [shortest] = sorted;
  const last = sorted.at(-1);
  if (shortest === undefined || last === undefined) return undefined;
  const isWhole = sorted.every((duration) => duration.isWhole);
  const from = minutesText(shortest.elapsed);
  const to = minutesText(last.elapsed);
  const span = from === undefined || from === to ? to : `${from} to ${to}`;
  const isUpTo = from === undefined && to !== undefined && sorted.length > 1;
  if (span === undefined) return undefined;
  if (isUpTo) return `up to ${span}`;
  return isWhole ? span : `at least ${span}`;
}

/** Work of one number of people on the same machines. */
interface CrewGroup extends Pick<CrewLine, 'when' | 'condition'> {
  readonly all: Crewed[];
}

/** Where more than one person is needed: one line for each number of people and kind of machine. */
export function crewLines(
  crewed: readonly Crewed[],
  scope: VariantSet,
  manual: ManualModel,
  numbers: StepNumbers,
  linkTo: (step: string) => PageLink,
): readonly CrewLine[] {
  const groups = new Map<string, CrewGroup>();
  for (const one of crewed) {
    const when = machineWords(one.under, scope, manual);
    const key = JSON.stringify([one.people, when]);
    const condition = setCondition(one.under, scope, manual.space);
    const group = groups.get(key) ?? { when, condition, all: [] };
    group.all.push(one);
    groups.set(key, group);
  }
  return [...groups.values()]
    .map(({ when, condition, all }) => {
      const minutes = minutesText(all.reduce((sum, one) => sum + one.minutes, 0));
      const isWhole = all.every((one) => one.isWhole);
      return {
        people: all[0]?.people ?? 1,
        steps: [...new Set(all.flatMap(({ at }) => numberAt(at, numbers) ?? []))].map(linkTo),
        time: minutes === undefined || isWhole ? minutes : `at least ${minutes}`,
        when,
        condition,
      };
    })
    .sort((a, b) => a.people - b.people);
}

/** The innermost number on the sheet: that of the step in a job that is printed in place. */
function numberAt({ in: outer, inside }: WorkPlace, numbers: StepNumbers): string | undefined {
  const job = inside && numbers.job(inside.perform);
  const inner = job && inside && numberAt(inside.at, job.numbers);
  return inner ?? numbers.of(outer);
}

function totalText({ elapsed, isWhole }: Duration): string | undefined {
  const minutes = minutesText(elapsed);
  return minutes === undefined || isWhole ? minutes : `at least ${minutes}`;
}

/** What the time is made of, where some of it is waiting. */
function partsText({ work, waits, elapsed }: Duration): string | undefined {
  const wait = minutesText(waits);
  if (wait === undefined) return undefined;
  const worked = minutesText(work);
  const parts =
    worked === undefined ? `${wait} of waits` : `${worked} of work and ${wait} of waits`;
  const used = Math.ceil(work) + Math.ceil(waits) - Math.ceil(elapsed);
  if (used <= 0) return parts;
  return `${parts}; ${minutesText(used)} of the waits ${used === 1 ? 'is' : 'are'} used for other steps`;
}
