import fc from 'fast-check';
import { keepLedger } from '../../src/ledger/index.ts';
import { balancedArbitrary } from './balanced.ts';
import { linkedFrom, procedureText } from './manual-from.ts';
import { type Piece, piecesArbitrary } from './script.ts';
import { textsOf, type World, worldArbitrary } from './world.ts';

/** Things taken away one after the other. */
export const orderlyRemoval = orderly((world) =>
  balancedArbitrary(world, { mayStayAway: false }).map(({ away }) => away),
);

/** Things taken away in any order, in lots, in branches and for some machines. */
export const orderlyWork = orderly((world) =>
  piecesArbitrary(world, { withBranches: true, withPerform: false }).map((pieces) =>
    pieces.slice(0, 4).map(onlyRemovals),
  ),
);

const removals: readonly string[] = [
  ...['remove', 'loosen', 'set-aside', 'disconnect', 'cap', 'drain', 'relieve', 'isolate', 'set'],
  'fit',
];

function onlyRemovals(piece: Piece): Piece {
  switch (piece.is) {
    case 'step':
      return { ...piece, acts: piece.acts.filter(({ verb }) => removals.includes(verb)) };
    case 'either':
      return { ...piece, ways: piece.ways.map((way) => way.map(onlyRemovals)) };
    case 'perform':
      return piece;
    default:
      return { ...piece, inside: piece.inside.map(onlyRemovals) };
  }
}

/** A section in order: all that can be said against it is that nothing comes back. */
function orderly(pieces: (world: World) => fc.Arbitrary<readonly Piece[]>) {
  return worldArbitrary
    .chain((world) => fc.record({ world: fc.constant(world), away: pieces(world) }))
    .map(({ world, away }) => ({
      texts: textsOf(world),
      text: procedureText('job', away, {}).replace('\n\n', '\n\n## Removal\n\n'),
    }))
    .filter(({ texts, text }) => {
      const facts = keepLedger(linkedFrom({ ...texts, 'procedures/job.md': text }));
      return facts.length > 0 && facts.every(({ kind }) => kind === 'not-home');
    });
}
