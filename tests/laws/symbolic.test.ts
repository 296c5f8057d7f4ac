import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { compareAll } from './compare.ts';
import { givenArbitrary, linkedFrom } from './manual-from.ts';

const runs = 300;

describe('the ledger of all machines at once says of each what the ledger of it alone says', () => {
  test.each([
    ['variants', { withBranches: false, withPerform: false }],
    ['variants and what the technician finds', { withBranches: true, withPerform: false }],
    ['variants and a performed job', { withBranches: false, withPerform: true }],
  ])('%s', (_, shape) => {
    let cases = 0;
    let unsure = 0;
    fc.assert(
      fc.property(givenArbitrary(shape), ({ world, texts }) => {
        for (const one of compareAll(world, linkedFrom(texts))) {
          cases += 1;
          unsure += one.unsure;
          expect({ of: one.of, facts: one.said }).toEqual({ of: one.of, facts: one.alone });
        }
      }),
      { seed: 2, numRuns: runs },
    );
    console.log(`${runs} manuals, ${cases} machines; ${unsure} facts told by an example only`);
  });
});
