import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type Job, type MustFollow, schedule } from '../../src/derive/index.ts';

interface Work {
  readonly jobs: readonly Job[];
  /** For each job the earlier ones that it must follow. */
  readonly after: readonly ReadonlySet<number>[];
}

const follows =
  ({ after }: Work): MustFollow =>
  (later, earlier) =>
    after[later]?.has(earlier) ?? false;

const scheduled = (work: Work) => schedule(work.jobs, follows(work));

const total = (work: Work, of: (job: Job) => number) =>
  work.jobs.reduce((sum, job) => sum + of(job), 0);

/** Work and a wait, given as pairs, and what each follows. */
const work = (...steps: readonly (readonly [work: number, wait: number, after: number[]])[]) => ({
  jobs: steps.map(([busy, wait]) => ({ busy, elapsed: busy + wait })),
  after: steps.map(([, , after]) => new Set(after)),
});

/**
 * The longest chain: every chain of jobs that follow each other is gone through, by the textbook definition
 * of the critical path as the longest path through the network of activities, not by a forward pass.
 */
function longestChain({ jobs, after }: Work): number {
  const from = (index: number): number => {
    const rest = after.flatMap((before, next) => (before.has(index) ? [from(next)] : []));
    return (jobs[index]?.elapsed ?? 0) + Math.max(0, ...rest);
  };
  return Math.max(0, ...jobs.map((_, index) => from(index)));
}

/** The shortest way there is: every order that keeps what must follow what. */
function shortest(all: Work): number {
  const { jobs, after } = all;
  const go = (done: ReadonlyMap<number, number>, free: number): number => {
    if (done.size === jobs.length) return Math.max(free, ...done.values());
    const ends = jobs.flatMap((job, index) => {
      const before = [...(after[index] ?? [])];
      if (done.has(index) || before.some((earlier) => !done.has(earlier))) return [];
      const start = Math.max(free, ...before.map((earlier) => done.get(earlier) ?? 0));
      return [go(new Map([...done, [index, start + job.elapsed]]), start + job.busy)];
    });
    return Math.min(...ends);
  };
  return go(new Map(), 0);
}

const minutes = fc.integer({ min: 0, max: 30 });

const anyWork = (most: number, wait: fc.Arbitrary<number> = minutes): fc.Arbitrary<Work> =>
  fc
    .array(fc.tuple(minutes, wait, fc.array(fc.nat({ max: most }), { maxLength: 3 })), {
      maxLength: most,
    })
    .map((steps) => ({
      jobs: steps.map(([busy, after]) => ({ busy, elapsed: busy + after })),
      after: steps.map(
        ([, , before], index) => new Set(before.filter((earlier) => earlier < index)),
      ),
    }));

describe('one crew', () => {
  test.each([
    ['nothing', work(), 0, 0],
    ['a wait at the end', work([5, 0, []], [5, 20, [0]]), 10, 30],
    ['a wait that nothing can use', work([5, 20, []], [5, 0, [0]], [5, 0, [1]]), 35, 35],
    ['a wait that the next step uses', work([5, 20, []], [10, 0, []], [5, 0, [0]]), 30, 30],
    ['a step that is not ready is passed', work([5, 20, []], [5, 0, [0]], [10, 0, []]), 30, 30],
    // To pass would put the long wait of the second step behind the long work of the third.
    [
      'no step is passed where that takes longer',
      work([1, 1, []], [1, 200, [0]], [100, 0, []]),
      103,
      203,
    ],
    // Two chains, each of work, a wait and work: 5+20+5 with the other's 5 in the wait.
    ['two waits at once', work([5, 20, []], [5, 20, []], [5, 0, [0]], [5, 0, [1]]), 35, 35],
  ])('%s', (_, steps, busy, elapsed) => expect(scheduled(steps)).toEqual({ busy, elapsed }));
});

describe('for any work', () => {
  const property = (most: number, check: (all: Work) => void, wait?: fc.Arbitrary<number>) =>
    fc.assert(fc.property(anyWork(most, wait), check), { numRuns: 300 });

  test('it is not longer than everything one after the other', () =>
    property(40, (all) => {
      expect(scheduled(all).elapsed).toBeLessThanOrEqual(total(all, ({ elapsed }) => elapsed));
    }));

  test('it is not shorter than the work, nor than any chain', () =>
    property(12, (all) => {
      const { elapsed, busy } = scheduled(all);
      expect(elapsed).toBeGreaterThanOrEqual(busy);
      expect(busy).toBeGreaterThanOrEqual(total(all, (job) => job.busy));
      expect(elapsed).toBeGreaterThanOrEqual(longestChain(all));
    }));

  test('it is not shorter than the shortest order, tried out', () =>
    property(6, (all) => {
      expect(scheduled(all).elapsed).toBeGreaterThanOrEqual(shortest(all));
    }));

  test('without waits it is the sum, whatever follows what', () =>
    property(
      40,
      (all) => {
        const sum = total(all, ({ busy }) => busy);
        expect(scheduled(all)).toEqual({ busy: sum, elapsed: sum });
      },
      fc.constant(0),
    ));

  test('of a chain it is all times and waits', () =>
    property(20, ({ jobs }) => {
      const chain = { jobs, after: jobs.map((_, i) => new Set(i === 0 ? [] : [i - 1])) };
      expect(scheduled(chain).elapsed).toBe(total(chain, ({ elapsed }) => elapsed));
      expect(longestChain(chain)).toBe(scheduled(chain).elapsed);
    }));
});

/**
 * Critical path method, forward pass: earliest finish = the latest earliest finish of what comes before
 * + duration. The formula is that of any textbook of operations research (from memory). Work that takes
 * nobody's hands is limited by nothing else, so that both must agree where all durations are waits.
 */
test('waits alone take as long as the critical path', () => {
  fc.assert(
    fc.property(anyWork(25, minutes), (all) => {
      const waits = {
        ...all,
        jobs: all.jobs.map(({ elapsed, busy }) => ({ busy: 0, elapsed: elapsed - busy })),
      };
      const finish: number[] = [];
      waits.jobs.forEach(({ elapsed }, index) => {
        const before = [...(waits.after[index] ?? [])].map((earlier) => finish[earlier] ?? 0);
        finish.push(Math.max(0, ...before) + elapsed);
      });
      expect(scheduled(waits).elapsed).toBe(Math.max(0, ...finish));
    }),
    { numRuns: 300 },
  );
});
