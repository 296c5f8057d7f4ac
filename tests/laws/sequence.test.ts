import fc from 'fast-check';
import { expect, test } from 'vitest';
import { keepLedger } from '../../src/ledger/index.ts';
import { balancedArbitrary } from './balanced.ts';
import { type CleanJob, cleanJob } from './clean-job.ts';
import { linkedFrom, procedureText, statesArbitrary } from './manual-from.ts';
import { saidOfEach } from './same-machines.ts';
import { markdownOf, piecesArbitrary } from './script.ts';
import { textsOf, worldArbitrary } from './world.ts';

const runs = 120;

/** Two jobs that balance, the second from where the first one leaves the machine, and a caller around them. */
const given = worldArbitrary
  .chain((world) =>
    fc.record({
      world: fc.constant(world),
      first: balancedArbitrary(world, { mayStayAway: true }),
      second: balancedArbitrary(world, { mayStayAway: true }),
      before: piecesArbitrary(world, { withBranches: false, withPerform: false }),
      after: piecesArbitrary(world, { withBranches: false, withPerform: false }),
      hasBefore: fc.boolean(),
      starts: statesArbitrary(world),
    }),
  )
  .map(({ world, first, second, before, after, hasBefore, starts }) => {
    const texts = textsOf(world);
    const one = [...first.away, ...first.back];
    const two = [...second.away, ...second.back];
    const a = cleanJob('first', one, starts, texts);
    const b = a && cleanJob('second', two, a.leaves, texts);
    const around = { before: hasBefore ? before : [], after };
    return a && b && { world, texts, a, b, pieces: [...one, ...two], starts, ...around };
  })
  .filter((found) => found !== undefined);

test('two jobs that balance, one after the other, are one that balances and leaves the same', () => {
  fc.assert(
    fc.property(given, ({ texts, b, pieces, starts }) => {
      const both = cleanJob('both', pieces, starts, texts);
      expect(both?.leaves).toEqual(b.leaves);
    }),
    { numRuns: runs },
  );
});

test('performing two jobs tells a caller what performing the one made of both tells', () => {
  let compared = 0;
  fc.assert(
    fc.property(given, ({ world, texts, a, b, pieces, starts, before, after }) => {
      const both = cleanJob('both', pieces, starts, texts);
      if (both === undefined) throw new Error('the job made of both does not balance');
      const job = (performed: readonly CleanJob[]) => {
        const performs = performed.map(({ id }) => `::perform{procedure=${id}}\n\n`).join('');
        const text = `${procedureText('job', before, { starts })}\n${performs}${markdownOf(after, 'after')}`;
        const files = performed.map((one) => [`procedures/${one.id}.md`, one.text] as const);
        const manual = linkedFrom({
          ...texts,
          ...Object.fromEntries(files),
          'procedures/job.md': text,
        });
        return { manual, facts: keepLedger(manual) };
      };
      const apart = job([a, b]);
      const together = job([both]);
      // Where the caller has not brought the machine to the start of a job, that is told of each job.
      const isStrange = [...apart.facts, ...together.facts].some(
        ({ kind, inside }) => kind === 'start-not-met' || inside !== undefined,
      );
      if (isStrange) return;
      compared += 1;
      expect(saidOfEach(world, apart.manual, apart.facts)).toEqual(
        saidOfEach(world, together.manual, together.facts),
      );
    }),
    { seed: 3, numRuns: runs },
  );
  console.log(`${compared} of ${runs} callers met the starts of both jobs`);
});
