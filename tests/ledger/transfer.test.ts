import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type Account, atHome, type Counts, countsOf } from '../../src/ledger/account.ts';
import { type Move, moveOf, statesOf } from '../../src/ledger/kinds.ts';
import { transfer } from '../../src/ledger/transfer.ts';
import { itemsOf } from '../support/manual.ts';

const items = itemsOf(`
fasteners:
  bolt: { name: bolt, count: 8, torque: 22 N·m }
  split-pin: { name: split pin, count: 2, single-use: true, tightness: hand-tight }
parts:
  cover: { name: cover }
  gasket: { name: gasket, single-use: true }
connections:
  hose: { name: hose, type: hose }
circuits:
  coolant: { name: coolant, fluid: coolant, capacity: 6 L, bleed: at the screw }
aids:
  stand: { name: stand, count: 2 }
energy:
  battery: { name: battery, type: electrical }
`);

type Known = Parameters<typeof moveOf>[1];

function account(id: string): Account {
  const item = items.get(id);
  if (
    item === undefined ||
    item.kind === 'tool' ||
    item.kind === 'consumable' ||
    item.kind === 'hazard' ||
    item.kind === 'control'
  ) {
    throw new Error(`no account ${id}`);
  }
  const size = 'count' in item ? item.count : 1;
  return { item, instance: undefined, aspect: 'state', states: statesOf[item.kind], size };
}

function move(verb: Parameters<typeof moveOf>[0], item: Known, isNew = false): Move {
  const found = moveOf(verb, item, { isNew, partly: false, to: undefined });
  if (found === undefined) throw new Error(`${verb} moves nothing`);
  return found;
}

/** Runs verbs one after the other and answers the counts, or the first outcome that is no clean move. */
function run(
  id: string,
  ...verbs: [verb: Parameters<typeof moveOf>[0], qty?: number, isNew?: boolean][]
): Counts | string {
  const one = account(id);
  let counts = atHome(one);
  for (const [verb, qty, isNew] of verbs) {
    const result = transfer(one, counts, move(verb, one.item, isNew), qty);
    if (result.outcome !== 'moved') return result.outcome;
    counts = result.counts;
  }
  return counts;
}

describe('what a verb does to the counts', () => {
  test.each([
    ['bolts come out all at once', run('bolt', ['remove']), [0, 0, 0, 8, 0]],
    ['some of them', run('bolt', ['remove', 3]), [5, 0, 0, 3, 0]],
    ['loosened first, then out', run('bolt', ['loosen'], ['remove']), [0, 0, 0, 8, 0]],
    ['installed is not yet tight', run('bolt', ['remove'], ['install']), [0, 8, 0, 0, 0]],
    ['torqued is', run('bolt', ['remove'], ['install'], ['torque']), [8, 0, 0, 0, 0]],
    [
      'tighten alone does not reach the torque',
      run('bolt', ['loosen'], ['tighten']),
      [0, 8, 0, 0, 0],
    ],
    ['a torque check of tight bolts', run('bolt', ['torque']), [8, 0, 0, 0, 0]],
    [
      'in two lots',
      run('bolt', ['remove'], ['install', 4], ['install', 4], ['torque']),
      [8, 0, 0, 0, 0],
    ],
    ['twice out', run('bolt', ['remove'], ['remove']), 'already'],
    ['more than there are', run('bolt', ['remove', 9]), 'too-many'],
    ['more than are out', run('bolt', ['remove', 4], ['install', 6]), 'too-many'],
    ['in, never out', run('bolt', ['install']), 'already'],
    ['a single-use pin goes for good', run('split-pin', ['remove']), [0, 0, 0, 0, 2]],
    [
      'and comes back only as a new one',
      run('split-pin', ['remove'], ['install', undefined, true]),
      [2, 0, 0, 0, 0],
    ],
    ['never the old one', run('split-pin', ['remove'], ['install']), 'old-back'],
    ['a gasket likewise', run('gasket', ['remove'], ['install']), 'old-back'],
    ['replaced in one go', run('gasket', ['replace']), [1, 0, 0, 0]],
    ['put aside and returned', run('cover', ['set-aside'], ['return']), [1, 0, 0, 0]],
    ['thrown away while still in', run('cover', ['discard']), 'unfit'],
    [
      'thrown away, then the old one back',
      run('cover', ['remove'], ['discard'], ['install']),
      'old-back',
    ],
    ['torqued while out', run('bolt', ['remove'], ['torque']), 'unfit'],
    ['connected while capped', run('hose', ['disconnect'], ['cap'], ['connect']), 'unfit'],
    ['capped while connected', run('hose', ['cap']), 'unfit'],
    [
      'opened, capped, uncapped, made',
      run('hose', ['disconnect'], ['cap'], ['uncap'], ['connect']),
      [1, 0, 0, 0],
    ],
    ['filled but not bled', run('coolant', ['drain'], ['fill']), [0, 1, 0, 0]],
    ['bled', run('coolant', ['drain'], ['fill'], ['bleed']), [1, 0, 0, 0]],
    ['bled while drained', run('coolant', ['drain'], ['bleed']), 'unfit'],
    ['filled while full', run('coolant', ['fill']), 'already'],
    ['one of two stands left', run('stand', ['fit'], ['withdraw', 1]), [1, 1]],
    ['live while live', run('battery', ['restore']), 'already'],
  ])('%s', (_name, found, expected) => {
    expect(found).toEqual(expected);
  });

  test('no piece is ever made or lost, whatever is done in whatever order', () => {
    const verbs = [
      'remove',
      'discard',
      'loosen',
      'install',
      'replace',
      'tighten',
      'torque',
    ] as const;
    const doing = fc.tuple(
      fc.constantFrom(...verbs),
      fc.option(fc.integer({ min: 1, max: 12 }), { nil: undefined }),
      fc.boolean(),
    );
    fc.assert(
      fc.property(
        fc.constantFrom('bolt', 'split-pin'),
        fc.array(doing, { maxLength: 12 }),
        (id, list) => {
          const one = account(id);
          let counts = atHome(one);
          for (const [verb, qty, isNew] of list) {
            counts = transfer(one, counts, move(verb, one.item, isNew), qty).counts;
            expect(counts.reduce((sum, n) => sum + n, 0)).toBe(one.size);
            expect(Math.min(...counts)).toBeGreaterThanOrEqual(0);
          }
        },
      ),
    );
  });
});

describe('states in a contract', () => {
  test('a state for all pieces, or counts that add up', () => {
    const bolt = account('bolt');
    expect(countsOf(bolt, 'out')).toEqual([0, 0, 0, 8, 0]);
    expect(countsOf(bolt, { out: 4, tight: 4 })).toEqual([4, 0, 0, 4, 0]);
    expect(countsOf(bolt, { out: 4, tight: 3 })).toBeUndefined();
    expect(countsOf(bolt, 'drained')).toBeUndefined();
  });
});
