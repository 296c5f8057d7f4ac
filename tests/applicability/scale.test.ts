import { describe, expect, test } from 'vitest';
import {
  type Attribute,
  createSpace,
  PartitionMap,
  printCondition,
  type Space,
} from '../../src/applicability/index.ts';

/** Costs are counted in nodes and entries, which do not depend on the machine that runs the tests. */
function options(count: number): { readonly space: Space; readonly ids: readonly string[] } {
  const attributes = Array.from({ length: count }, (_, index): Attribute => {
    return { id: `option-${index + 1}`, values: ['yes', 'no'] };
  });
  return { space: createSpace(attributes, []).space, ids: attributes.map(({ id }) => id) };
}

describe('24 independent yes/no options', () => {
  test('each guarding its own item: two entries an item, a few nodes an option', () => {
    const { space, ids } = options(24);
    for (const id of ids) {
      const fitted = space.is(id, 'yes');
      const out = PartitionMap.constant(space, 'tight').map(fitted, () => 'out');
      expect(out.entries()).toHaveLength(2);
      expect(out.map(fitted, () => 'tight').entries()).toHaveLength(1);
      expect(space.describe(out.where((value) => value === 'out'))).toMatchObject({
        kind: 'bare',
        attribute: { text: id },
      });
    }
    expect(space.count(space.all)).toBe(16_777_216n);
    expect(space.nodeCount).toBeLessThanOrEqual(2 + 2 * 24);
  });

  test('at least one of them, and all of them, take a node each and a part each', () => {
    const { space, ids } = options(24);
    const sets = ids.map((id) => space.is(id, 'yes'));
    const some = sets.reduce((a, b) => space.or(a, b));
    const every = sets.reduce((a, b) => space.and(a, b));
    expect(space.size(some)).toBe(24);
    expect(space.size(every)).toBe(24);
    expect(space.count(some)).toBe(16_777_215n);
    expect(space.count(every)).toBe(1n);
    expect(space.describe(some)).toMatchObject({ kind: 'any', of: { length: 24 } });
    expect(space.describe(every)).toMatchObject({ kind: 'all', of: { length: 24 } });
  });

  test('a count over all of them: 25 entries, and words only for those that can be told', () => {
    const { space, ids } = options(24);
    let count = PartitionMap.constant(space, 0);
    for (const id of ids) count = count.map(space.is(id, 'yes'), (value) => value + 1);
    const entries = count.entries();
    expect(entries.map(({ value }) => value)).toEqual([...Array(25).keys()].reverse());
    for (const { set, value } of entries) {
      expect(space.size(set)).toBeLessThanOrEqual(24 * 13);
      expect(space.count(set)).toBe(choose(24, value));
    }
    expect(space.describe(count.where((value) => value === 12))).toBe('too-long');
    expect(space.describe(count.where((value) => value > 0))).toMatchObject({ kind: 'any' });
    expect(space.nodeCount).toBeLessThan(200_000);
  });

  test('pairs ruled out by constraints do not lengthen what is said of another option', () => {
    const { space: plain, ids } = options(24);
    const never = ids.slice(0, 11).flatMap((id, index) => {
      const pair = plain.describe(
        plain.and(plain.is(id, 'yes'), plain.is(ids[index + 11] ?? '', 'yes')),
      );
      return pair === undefined || pair === 'too-long' ? [] : [pair];
    });
    expect(never).toHaveLength(11);
    const { space } = createSpace(plain.attributes, never);
    expect(space.count(space.all)).toBe(3n ** 11n * 4n);
    const description = space.describe(space.is('option-23', 'yes'));
    if (description === undefined || description === 'too-long') throw new Error('one option');
    expect(printCondition(description)).toBe('option-23');
    expect(space.describe(space.is('option-1', 'yes'))).toMatchObject({ kind: 'bare' });
  });
});

test('thousands of attributes: depth is no danger', () => {
  const { space, ids } = options(3000);
  const every = ids
    .toReversed()
    .reduce((set, id) => space.and(space.is(id, 'yes'), set), space.all);
  const some = ids.toReversed().reduce((set, id) => space.or(space.is(id, 'yes'), set), space.none);
  expect(space.size(every)).toBe(3000);
  expect(space.count(every)).toBe(1n);
  expect(space.count(some)).toBe(2n ** 3000n - 1n);
  expect(space.size(space.minus(some, every))).toBe(2 * 3000 - 1);
  expect(space.size(space.and(some, space.not(every)))).toBe(2 * 3000 - 1);
  expect(space.size(space.forget(every, 'option-3000'))).toBe(2999);
  expect(space.size(space.cofactor(every, 'option-1500', 'yes'))).toBe(2999);
  expect(space.pick(every)?.size).toBe(3000);
  const last = space.fresh([{ value: 'yes', label: 'it leaks' }, { value: 'no' }], 'leak');
  expect(space.size(space.and(every, space.is(last.id, 'yes')))).toBe(3001);
  expect(space.describe(every)).toBe('too-long');
  expect(space.describe(space.is('option-2000', 'yes'))).toMatchObject({ kind: 'bare' });
});

function choose(from: number, count: number): bigint {
  let ways = 1n;
  for (let taken = 0; taken < count; taken += 1)
    ways = (ways * BigInt(from - taken)) / BigInt(taken + 1);
  return ways;
}
