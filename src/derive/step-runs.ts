import { allSteps, blocksIn, type LinkedProcedure, within } from '../link/index.ts';
import type { Block, Procedure } from '../syntax/index.ts';
import { type Numbered, stepNumbers } from './step-numbers.ts';
import { mustFollow, type Turn, turnOf } from './step-order.ts';

/** Steps of the first rank that are done one after the other. */
export interface StepRun {
  /** Numbers of the first and the last of them; the same of a single step. */
  readonly first: string;
  readonly last: string;
  /** Places in the list of the runs that must be over before it, none that follows from another. */
  readonly after: readonly number[];
}

/**
 * The steps of a procedure as runs, with what must be done before what: by `needs` and by what the
 * catalogue ties together. Undefined where all steps must follow each other as they are written, and of a
 * procedure that neither says `needs` nor waits: its order is that of the sheet.
 */
export function stepRuns(one: LinkedProcedure): readonly StepRun[] | undefined {
  if (!saysOrder(one.procedure)) return undefined;
  const works = [...worksOf(one)];
  const before = closure(works);
  const shown = works.flatMap(({ numbers }, i) => (numbers.length > 0 ? [i] : []));
  const isStraight = shown.every((i, at) => at === 0 || before[i]?.has(shown[at - 1] ?? -1));
  if (isStraight) return undefined;
  return joined(works, shown, directOf(shown, before));
}

interface Work {
  /** Numbers of the first rank; none of what stands beside the steps without one. */
  readonly numbers: readonly string[];
  readonly turn: Turn;
}

function saysOrder(procedure: Procedure): boolean {
  const steps = [...allSteps(procedure)];
  return (
    steps.some(({ needs, wait }) => needs.length > 0 || wait !== undefined) ||
    procedure.sections.some(({ blocks }) =>
      [...within(blocks)].some(({ type }) => type === 'needs'),
    )
  );
}

/** What has its own turn, in order of writing; ways to choose from are one piece of work. */
function* worksOf(one: LinkedProcedure): Generator<Work> {
  const numbers = stepNumbers(one.procedure);
  const numbered = (all: readonly Numbered[]): string[] =>
    all.flatMap((step) => numbers.of(step) ?? []).filter((number) => !number.includes('.'));
  const inside = function* (blocks: readonly Block[]): Generator<Work> {
    for (const block of blocks) {
      if (block.type === 'steps') {
        for (const step of block.steps)
          yield { numbers: numbered([step]), turn: turnOf(step.blocks, one, step) };
        continue;
      }
      if (block.type === 'branch') {
        const all = [...within([block])].flatMap((inner): readonly Numbered[] =>
          inner.type === 'steps'
            ? inner.steps
            : inner.type === 'perform' || inner.type === 'reverse'
              ? [inner]
              : [],
        );
        yield { numbers: numbered(all), turn: turnOf([block], one) };
        continue;
      }
      if (block.type === 'perform' || block.type === 'reverse')
        yield { numbers: numbered([block]), turn: turnOf([block], one) };
      else if (block.type === 'needs') yield { numbers: [], turn: turnOf([block], one) };
      yield* inside(blocksIn(block));
    }
  };
  for (const { blocks } of one.procedure.sections) yield* inside(blocks);
}

/** For each work the places of all that must be over before it. */
function closure(works: readonly Work[]): readonly ReadonlySet<number>[] {
  const before: Set<number>[] = [];
  works.forEach(({ turn }, later) => {
    const all = new Set<number>();
    for (let earlier = later - 1; earlier >= 0; earlier--) {
      const other = works[earlier];
      if (other === undefined || all.has(earlier) || !mustFollow(turn, other.turn)) continue;
      all.add(earlier);
      for (const one of before[earlier] ?? []) all.add(one);
    }
    before.push(all);
  });
  return before;
}

/** For each shown work the shown ones right before it: none that another of them must follow. In order of writing. */
function directOf(
  shown: readonly number[],
  before: readonly ReadonlySet<number>[],
): readonly (readonly number[])[] {
  return shown.map((work, at) => {
    const direct: number[] = [];
    const further = new Set<number>();
    // From the nearest on: what comes before one that is not direct also comes before a direct one.
    for (const one of shown.slice(0, at).reverse()) {
      if (!before[work]?.has(one) || further.has(one)) continue;
      direct.push(one);
      for (const other of before[one] ?? []) further.add(other);
    }
    return direct.reverse();
  });
}

/** Works one after the other become a run where nothing comes in between or branches off. */
function joined(
  works: readonly Work[],
  shown: readonly number[],
  direct: readonly (readonly number[])[],
): readonly StepRun[] {
  const followers = new Map<number, number>();
  for (const places of direct)
    for (const place of places) followers.set(place, (followers.get(place) ?? 0) + 1);
  const runs: { numbers: string[]; after: number[] }[] = [];
  const runOf = new Map<number, number>();
  shown.forEach((work, at) => {
    const numbers = works[work]?.numbers ?? [];
    const [only, ...others] = direct[at] ?? [];
    const previous = shown[at - 1];
    const run = previous === undefined ? undefined : runOf.get(previous);
    const goesOn =
      only !== undefined && others.length === 0 && only === previous && followers.get(only) === 1;
    if (goesOn && run !== undefined) {
      runs[run]?.numbers.push(...numbers);
      runOf.set(work, run);
      return;
    }
    const after = (direct[at] ?? []).flatMap((place) => runOf.get(place) ?? []);
    runOf.set(work, runs.push({ numbers: [...numbers], after: [...new Set(after)] }) - 1);
  });
  return runs.map(({ numbers, after }) => ({
    first: numbers[0] ?? '',
    last: numbers.at(-1) ?? '',
    after,
  }));
}
