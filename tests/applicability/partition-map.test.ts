import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { createSpace, PartitionMap, resolveCondition } from '../../src/applicability/index.ts';
import { type caseOf, caseWith, contains, holds, type Machine } from './enumeration.ts';

const steps = (count: number) =>
  fc.tuple(
    caseWith(count),
    fc.array(fc.record({ add: fc.nat(3), modulus: fc.integer({ min: 1, max: 4 }) }), {
      minLength: count,
      maxLength: count,
    }),
  );

/** Changes a map and a plain table of machines in the same way. */
function both([{ given, conditions }, changes]: [
  {
    readonly given: ReturnType<typeof caseOf>;
    readonly conditions: readonly Parameters<typeof holds>[0][];
  },
  readonly { readonly add: number; readonly modulus: number }[],
]) {
  let map = PartitionMap.constant(given.space, 0);
  const table = new Map<Machine, number>(given.machines.map((machine) => [machine, 0]));
  conditions.forEach((condition, index) => {
    const { add, modulus } = changes[index] ?? { add: 0, modulus: 1 };
    const change = (value: number) => (value + add) % modulus;
    map = map.map(resolveCondition(given.space, condition).value, change);
    for (const [machine, value] of table) {
      if (holds(condition, machine)) table.set(machine, change(value));
    }
  });
  return { ...given, map, table };
}

function expectSame<T>(
  space: ReturnType<typeof caseOf>['space'],
  map: PartitionMap<T>,
  table: ReadonlyMap<Machine, T>,
): void {
  const entries = map.entries();
  expect(entries).toHaveLength(new Set(table.values()).size);
  expect(entries.map(({ set }) => set).reduce((a, b) => space.or(a, b))).toBe(space.all);
  // In the order in which the values first occur among the machines.
  expect(entries.map(({ value }) => value)).toEqual([...new Set(table.values())]);
  for (const [machine, value] of table) {
    for (const entry of entries) {
      expect(contains(space, entry.set, machine)).toBe(entry.value === value);
    }
  }
}

describe('a partition map against a plain table of all machines', () => {
  test('map, entries, where', () => {
    fc.assert(
      fc.property(steps(4), (given) => {
        const { space, machines, map, table } = both(given);
        expectSame(space, map, table);
        const odd = map.where((value) => value % 2 === 1);
        expect(space.count(odd)).toBe(
          BigInt(machines.filter((machine) => (table.get(machine) ?? 0) % 2 === 1).length),
        );
      }),
    );
  });

  test('at: the values of some machines', () => {
    fc.assert(
      fc.property(steps(3), (given) => {
        const { space, map, table } = both(given);
        const condition = given[0].conditions[0];
        if (condition === undefined) throw new Error('a condition is needed');
        const set = resolveCondition(space, condition).value;
        const inside = [...table].filter(([machine]) => holds(condition, machine));
        const parts = map.at(set);
        expect(parts.map(({ value }) => value)).toEqual([
          ...new Set(inside.map(([, value]) => value)),
        ]);
        expect(parts.reduce((sum, part) => space.or(sum, part.set), space.none)).toBe(set);
        for (const part of parts) expect(space.covers(set, part.set)).toBe(true);
      }),
    );
  });

  test('combine and equal', () => {
    fc.assert(
      fc.property(steps(4), (given) => {
        const { space, map, table } = both(given);
        const [cases, changes] = given;
        const second = both([
          { given: cases.given, conditions: cases.conditions.slice(0, 2) },
          changes.slice(0, 2),
        ]);
        const joined = map.combine(second.map, (a, b) => `${a},${b}`);
        expectSame(
          space,
          joined,
          new Map(
            [...table].map(([machine, value]) => [
              machine,
              `${value},${second.table.get(machine)}`,
            ]),
          ),
        );
        expect(map.equal(second.map)).toBe(
          [...table].every(([machine, value]) => second.table.get(machine) === value),
        );
        expect(map.equal(both(given).map)).toBe(true);
      }),
    );
  });
});

describe('a partition map', () => {
  const { space } = createSpace([{ id: 'feed', values: ['manual', 'hydraulic'] }], []);
  const hydraulic = space.is('feed', 'hydraulic');

  test('stays the same object where nothing changes', () => {
    const map = PartitionMap.constant(space, 'tight');
    expect(map.map(space.none, () => 'out')).toBe(map);
    expect(map.map(hydraulic, () => 'tight')).toBe(map);
    const changed = map.map(hydraulic, () => 'out');
    expect(map.entries()).toHaveLength(1);
    expect(changed.map(hydraulic, () => 'tight').equal(map)).toBe(true);
  });

  test('takes values with one key for one value', () => {
    const key = (value: { readonly out: number }) => value.out;
    const map = PartitionMap.constant(space, { out: 0 }, key);
    const back = map
      .map(hydraulic, ({ out }) => ({ out: out + 4 }))
      .map(hydraulic, ({ out }) => ({ out: out - 4 }));
    expect(back.entries()).toEqual([{ set: space.all, value: { out: 0 } }]);
    expect(back.equal(map)).toBe(true);
  });

  test('tells the machines that a change is for', () => {
    const told: unknown[] = [];
    PartitionMap.constant(space, 1).map(hydraulic, (value, machines) => {
      told.push([value, machines === hydraulic]);
      return value;
    });
    expect(told).toEqual([[1, true]]);
  });

  test('follows a branch that is added later', () => {
    const map = PartitionMap.constant(space, 'tight').map(hydraulic, () => 'out');
    const branch = space.fresh(
      [{ value: 'yes', label: 'the belt is cracked' }, { value: 'no' }],
      'belt',
    );
    const cracked = space.is(branch.id, 'yes');
    const branched = map.map(cracked, () => 'new');
    expect(branched.entries().map(({ value }) => value)).toEqual(['new', 'tight', 'out']);
    expect(branched.at(cracked).map(({ value }) => value)).toEqual(['new']);
    expect(branched.where((value) => value === 'out')).toBe(
      space.and(hydraulic, space.is(branch.id, 'no')),
    );
  });
});
