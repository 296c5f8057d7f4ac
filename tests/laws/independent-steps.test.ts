import fc from 'fast-check';
import { expect, test } from 'vitest';
import { keepLedger } from '../../src/ledger/index.ts';
import { balancedArbitrary } from './balanced.ts';
import { linkedFrom, procedureText } from './manual-from.ts';
import { saidOfEach } from './same-machines.ts';
import { actsIn, type Piece, piecesArbitrary } from './script.ts';
import { type Entry, textsOf, type World, worldArbitrary } from './world.ts';

const runs = 300;

const given = worldArbitrary.chain((world) =>
  fc.record({
    world: fc.constant(world),
    pieces: fc.oneof(
      piecesArbitrary(world, { withBranches: false, withPerform: false }),
      balancedArbitrary(world, { mayStayAway: true }).map(({ away, back }) => [...away, ...back]),
    ),
  }),
);

test('the order of two steps that have nothing to do with each other changes no finding', () => {
  let swapped = 0;
  fc.assert(
    fc.property(given, ({ world, pieces }) => {
      const texts = textsOf(world);
      const saidOf = (some: readonly Piece[]) => {
        const text = procedureText('job', some, {});
        const manual = linkedFrom({ ...texts, 'procedures/job.md': text });
        // A cap must be put on in the next step, whatever that is about.
        const facts = keepLedger(manual).filter(({ kind }) => kind !== 'uncapped');
        return saidOfEach(world, manual, facts);
      };
      const said = saidOf(pieces);
      pieces.forEach((second, i) => {
        const first = pieces[i - 1];
        if (first === undefined || !areIndependent(world, first, second)) return;
        swapped += 1;
        expect(saidOf([...pieces.slice(0, i - 1), second, first, ...pieces.slice(i + 1)])).toEqual(
          said,
        );
      });
    }),
    { numRuns: runs },
  );
  console.log(`${swapped} pairs of steps swapped in ${runs} procedures`);
});

function areIndependent({ entries }: World, a: Piece, b: Piece): boolean {
  const ofB = itemsIn(b);
  const byId = (id: string) => entries.find((entry) => entry.id === id);
  return itemsIn(a).every((one) =>
    ofB.every((other) => one !== other && !names(byId(one), other) && !names(byId(other), one)),
  );
}

const itemsIn = (piece: Piece): readonly string[] => actsIn(piece).map(({ item }) => item);

/** Whether an entry of the catalogue names another one, whatever as. */
const names = (entry: Entry | undefined, id: string): boolean =>
  Object.values(entry?.data ?? {})
    .flat()
    .includes(id);
