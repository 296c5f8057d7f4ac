import { describe, expect, test } from 'vitest';
import { awayIn, openLedger, statesOfItem } from '../../src/ledger/index.ts';
import { check, onePage } from '../support/manual.ts';

const items = `
fasteners:
  bolt: { name: bolt, count: 8, torque: 22 N·m, holds: lid }
  wheel-nut: { name: wheel nut, count: 5, torque: 90 N·m, each: [left, right] }
parts:
  lid: { name: lid }
  hose: { name: winch hose, when: winch }
circuits:
  oil: { name: oil, fluid: any, capacity: 4 L }
`;

const body = `1. :remove[Take 6 bolts out]{item=bolt qty=6}.
2. :loosen{item=wheel-nut each=left}.
3. :remove{item=hose}.
4. :drain{item=oil when="!winch"}.
5. :remove{item=bolt qty=2}, then :remove{item=lid}.
`;

/** The run over the page up to a text in it, the text left out. */
function upTo(found: string, front = '') {
  const text = onePage(items, body, front);
  const { linked } = check({
    'manual.yaml': 'title: Test\nvariants:\n  winch: [no, yes]\n',
    'procedures/example.md': text,
  });
  const one = linked.procedures.get('example');
  if (one === undefined) throw new Error('the example cannot be read');
  const { run, contract } = openLedger(linked).runBefore(one, text.indexOf(found));
  const of = (id: string) => {
    const item = one.item(id);
    return item === undefined || !('kind' in item) || !isKept(item) ? [] : statesOfItem(run, item);
  };
  return { of, away: awayIn(run, contract).map(({ item, instance }) => [item.id, instance]) };
}

type Kept = Parameters<typeof statesOfItem>[1];
const isKept = (item: { kind: string }): item is Kept =>
  !['tool', 'consumable', 'hazard'].includes(item.kind);

describe('where items stand before an offset of the text', () => {
  test('an action counts from its end on', () => {
    const [before] = upTo(':remove[Take 6').of('bolt');
    expect(before?.standing).toEqual([{ spread: [['tight', 8]], isHome: true, when: undefined }]);
    const [within] = upTo('qty=6').of('bolt');
    expect(within?.standing).toEqual(before?.standing);
    const [after] = upTo('2. :loosen').of('bolt');
    expect(after).toMatchObject({ size: 8, instance: undefined });
    expect(after?.standing).toEqual([
      {
        spread: [
          ['tight', 2],
          ['out', 6],
        ],
        isHome: false,
        when: undefined,
      },
    ]);
    expect(upTo(', then').of('bolt')[0]?.standing[0]?.spread).toEqual([['out', 8]]);
  });

  test('each instance has its own state', () => {
    const [left, right] = upTo('3. :remove').of('wheel-nut');
    expect(left).toMatchObject({ instance: 'left', standing: [{ spread: [['loose', 5]] }] });
    expect(right).toMatchObject({ instance: 'right', standing: [{ isHome: true }] });
  });

  test('variants that differ are told apart; those without the item do not count', () => {
    const { of } = upTo('5. :remove');
    expect(of('oil')[0]?.standing.toSorted((a) => (a.isHome ? 1 : -1))).toEqual([
      { spread: [['drained', 1]], isHome: false, when: '!winch' },
      { spread: [['full', 1]], isHome: true, when: 'winch' },
    ]);
    expect(of('hose')[0]?.standing.map(({ spread }) => spread)).toEqual([[['out', 1]]]);
  });

  test('what is away comes in the order in which it went; what starts away is away', () => {
    expect(upTo('5. :remove').away).toEqual([
      ['bolt', undefined],
      ['wheel-nut', 'left'],
      ['hose', undefined],
      ['oil', undefined],
    ]);
    expect(upTo('1. :remove', 'starts: { oil: drained }\n').away).toEqual([['oil', undefined]]);
    expect(upTo('1. :remove').away).toEqual([]);
  });
});
