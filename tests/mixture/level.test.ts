import { describe, expect, test } from 'vitest';
import { type Flow, followLevel } from '../../src/mixture/index.ts';

const holds = { low: 38, high: 38, slack: 0.5 };
const of = (does: Flow['does'], volume?: number, sureness: Flow['sureness'] = 'sure'): Flow => ({
  does,
  amount: volume === undefined ? undefined : { volume, slack: 0.05 },
  sureness,
});
const faults = (flows: readonly Flow[], missing: number | 'unknown' = 0) =>
  followLevel(flows, holds, missing === 'unknown' ? undefined : missing).faults.map(
    ({ fault, flow }) => `${fault} ${flow}`,
  );

describe('what goes in is what came out', () => {
  test.each<[string, readonly Flow[], readonly string[]]>([
    ['all out, to the mark', [of('drain'), of('fill')], []],
    ['all out, the capacity in', [of('drain'), of('fill', 38)], []],
    ['part out, as much in', [of('drain', 5), of('fill', 5)], []],
    ['part out, to the mark', [of('drain', 5), of('fill')], []],
    ['part out, more in', [of('drain', 5), of('fill', 7)], ['over-out 1']],
    ['part out, less in', [of('drain', 5), of('fill', 3)], ['short 1']],
    ['less in, then to the mark', [of('drain', 5), of('fill', 3), of('fill')], []],
    ['in two parts', [of('drain', 5), of('fill', 3), of('fill', 2)], []],
    ['more than it holds', [of('drain'), of('fill', 40)], ['over-capacity 1']],
    ['more out than it holds', [of('drain', 40), of('fill')], ['over-capacity 0']],
    ['a line loses some', [of('lose', 0.5)], ['short 0']],
    ['a line loses some, topped up', [of('lose', 0.5), of('fill')], []],
    ['a line of an empty circuit loses none', [of('drain'), of('lose', 0.5), of('fill', 38)], []],
    ['rounding is not told', [of('drain', 5), of('fill', 5.08)], []],
    ['filled without a drain', [of('fill', 1)], ['over-out 0']],
  ])('%s', (_, flows, wanted) => {
    expect(faults(flows)).toEqual(wanted);
  });
});

describe('only what is wrong for every case is told', () => {
  test.each<[string, readonly Flow[], readonly string[]]>([
    ['drained on some machines', [of('drain', 5, 'maybe'), of('fill', 5, 'maybe')], []],
    ['filled too much for all of them', [of('drain', 5, 'maybe'), of('fill', 7)], ['over-out 1']],
    ['not filled on some', [of('drain', 5), of('fill', 5, 'maybe')], []],
    ['to the mark on some', [of('drain', 5), of('fill', undefined, 'maybe')], []],
    ['drained again and again', [of('drain', 5, 'often'), of('fill', 15)], []],
    ['filled again and again', [of('drain', 15), of('fill', 5, 'often')], []],
  ])('%s', (_, flows, wanted) => {
    expect(faults(flows)).toEqual(wanted);
  });

  test('it starts drained, or nobody knows how far', () => {
    expect(faults([of('fill', 38)], 38)).toEqual([]);
    expect(faults([of('fill', 20)], 38)).toEqual(['short 0']);
    expect(faults([of('fill', 20)], 'unknown')).toEqual([]);
    expect(faults([of('fill', 40)], 'unknown')).toEqual(['over-capacity 0']);
  });
});

describe('what there is to collect', () => {
  test.each<[string, readonly Flow[], number]>([
    ['all of it', [of('drain'), of('fill')], 38],
    ['a part', [of('drain', 5), of('fill', 5)], 5],
    ['a part, then the rest', [of('drain', 5), of('drain')], 38],
    ['twice, with new fluid between', [of('drain'), of('fill'), of('drain'), of('fill')], 76],
    ['what runs out of a line', [of('lose', 0.5), of('fill')], 0.5],
    ['nothing of an empty one', [of('drain'), of('lose', 0.5)], 38],
  ])('%s', (_, flows, wanted) => {
    expect(followLevel(flows, holds, 0).collected).toBeCloseTo(wanted, 9);
  });

  test.each<[string, readonly Flow[], number | undefined]>([
    ['a flush', [of('drain', 10, 'often'), of('fill', 10, 'often')], undefined],
    [
      'a flush of all of it',
      [of('drain', undefined, 'often'), of('fill', undefined, 'often')],
      undefined,
    ],
    ['some at a time', [of('drain', 5, 'often'), of('fill')], undefined],
    [
      'a drain after a flush',
      [of('drain', 10, 'often'), of('fill', 10, 'often'), of('drain')],
      undefined,
    ],
    ['emptied each round, filled once', [of('drain', undefined, 'often'), of('fill')], 38],
    ['emptied before the rounds', [of('drain'), of('lose', 0.5, 'often'), of('fill')], 38],
    ['topped up round after round', [of('drain', 10), of('fill', 2, 'often')], 10],
  ])('where something is done once or more: %s', (_, flows, wanted) => {
    expect(followLevel(flows, holds, 0).collected).toBe(wanted);
  });
});
