import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  type Condition,
  resolveCondition,
  type Space,
  type VariantSet,
} from '../../src/applicability/index.ts';
import {
  type Case,
  caseArbitrary,
  caseOf,
  caseWith,
  contains,
  holds,
  type Machine,
} from './enumeration.ts';

/** Sets hold exactly the allowed machines that a plain test of each machine says they do. */
function expectMembers(given: Case, set: VariantSet, belongs: (machine: Machine) => boolean): void {
  for (const machine of given.machines) {
    expect(contains(given.space, set, machine)).toBe(belongs(machine));
  }
  expect(given.space.count(set)).toBe(BigInt(given.machines.filter(belongs).length));
}

function setOf(space: Space, condition: Condition): VariantSet {
  return resolveCondition(space, condition).value;
}

function pair(given: Case, conditions: readonly Condition[]) {
  const [left, right] = conditions;
  if (left === undefined || right === undefined) throw new Error('two conditions are needed');
  return {
    a: setOf(given.space, left),
    b: setOf(given.space, right),
    inA: (machine: Machine) => holds(left, machine),
    inB: (machine: Machine) => holds(right, machine),
  };
}

describe('sets against the list of all machines', () => {
  test('a condition gives the machines it holds for, a constraint takes them away', () => {
    fc.assert(
      fc.property(caseWith(2), ({ given, conditions }) => {
        const { a, inA } = pair(given, conditions);
        expectMembers(given, given.space.all, () => true);
        expectMembers(given, given.space.none, () => false);
        expectMembers(given, a, inA);
      }),
    );
  });

  test('and, or, minus, not', () => {
    fc.assert(
      fc.property(caseWith(2), ({ given, conditions }) => {
        const { a, b, inA, inB } = pair(given, conditions);
        const { space } = given;
        expectMembers(given, space.and(a, b), (machine) => inA(machine) && inB(machine));
        expectMembers(given, space.or(a, b), (machine) => inA(machine) || inB(machine));
        expectMembers(given, space.minus(a, b), (machine) => inA(machine) && !inB(machine));
        expectMembers(given, space.not(a), (machine) => !inA(machine));
      }),
    );
  });

  test('covers, equals and isEmpty; equal sets are one object', () => {
    fc.assert(
      fc.property(caseWith(2), ({ given, conditions }) => {
        const { a, b, inA, inB } = pair(given, conditions);
        const { space, machines } = given;
        expect(space.covers(a, b)).toBe(machines.every((each) => !inB(each) || inA(each)));
        const equal = machines.every((each) => inA(each) === inB(each));
        expect(space.equals(a, b)).toBe(equal);
        expect(a === b).toBe(equal);
        expect(a.id === b.id).toBe(equal);
        expect(space.isEmpty(a)).toBe(!machines.some(inA));
      }),
    );
  });

  test('forget and cofactor', () => {
    fc.assert(
      fc.property(caseWith(2), fc.nat(), fc.nat(), ({ given, conditions }, which, value) => {
        const { a, inA } = pair(given, conditions);
        const { space, attributes, machines } = given;
        const attribute = attributes[which % attributes.length];
        const fixed = attribute?.values[value % attribute.values.length];
        if (attribute === undefined || fixed === undefined) throw new Error('no attribute');
        const { id, values } = attribute;
        const members = new Set(machines.filter(inA).map(keyOf));
        const inWith = (machine: Machine, other: string) =>
          members.has(keyOf(new Map([...machine, [id, other]])));
        expectMembers(given, space.forget(a, id), (machine) =>
          values.some((other) => inWith(machine, other)),
        );
        expectMembers(given, space.cofactor(a, id, fixed), (machine) => inWith(machine, fixed));
      }),
    );
  });

  test('pick gives the first machine of the set, support what it decides on', () => {
    fc.assert(
      fc.property(caseWith(2), ({ given, conditions }) => {
        const { a, inA } = pair(given, conditions);
        const { space, attributes, machines } = given;
        expect(space.pick(a)).toEqual(machines.find(inA));
        // Where the set does not decide on an attribute, changing it alone changes nothing.
        const members = new Set(machines.filter(inA).map(keyOf));
        const support = space.support(a);
        for (const { id, values } of attributes) {
          const decides = [...members].some((key) =>
            values.some((value) => !members.has(keyOf(new Map([...machineOf(key), [id, value]])))),
          );
          expect(support.includes(id)).toBe(decides);
        }
      }),
    );
  });

  test('is: one value of one attribute', () => {
    fc.assert(
      fc.property(caseArbitrary, (given) => {
        for (const { id, values } of given.attributes) {
          for (const value of values) {
            const set = given.space.is(id, value);
            expectMembers(given, set, (machine) => machine.get(id) === value);
          }
        }
      }),
    );
  });
});

describe('laws of construction', () => {
  test('what was built before changes no set, no order, no description', () => {
    fc.assert(
      fc.property(caseWith(4), ({ given, conditions }) => {
        const other = caseOf(given.attributes, given.constraints).space;
        const forth = conditions.map((each) => setOf(given.space, each));
        const back = conditions
          .toReversed()
          .map((each) => setOf(other, each))
          .reverse();
        forth.forEach((set, index) => {
          const same = back[index];
          if (same === undefined) throw new Error('sets are paired');
          expect(other.size(same)).toBe(given.space.size(set));
          expect(other.pick(same)).toEqual(given.space.pick(set));
          expect(other.describe(same)).toEqual(given.space.describe(set));
        });
      }),
    );
  });

  test('a fresh attribute leaves the sets before it as they were, and doubles nothing', () => {
    fc.assert(
      fc.property(caseWith(2), ({ given, conditions }) => {
        const { a, inA } = pair(given, conditions);
        const { space } = given;
        const branch = space.fresh(
          [
            { value: 'mend', label: 'it can be mended' },
            { value: 'new', label: 'it is split' },
            { value: 'sound' },
          ],
          'state of the hose',
        );
        expect(pair(given, conditions).a).toBe(a);
        expectMembers(given, a, inA);
        const mended = space.and(a, space.is(branch.id, 'mend'));
        const rest = space.minus(a, mended);
        expect(space.or(mended, rest)).toBe(a);
        expect(space.forget(mended, branch.id)).toBe(a);
        expect(space.cofactor(mended, branch.id, 'mend')).toBe(a);
        expect(space.cofactor(mended, branch.id, 'new')).toBe(space.none);
        expect(space.forget(rest, branch.id)).toBe(a);
        expect(space.count(mended)).toBe(space.count(a));
        if (a !== space.none) {
          expect(space.pick(rest)?.get(branch.id)).toBe('new');
          expect(space.support(rest)).toContain(branch.id);
          expect(space.support(a)).not.toContain(branch.id);
        }
      }),
    );
  });
});

test('an id or a value that the space does not have is a fault of the caller', () => {
  const { space } = caseOf([{ id: 'feed', values: ['manual', 'hydraulic'] }], []);
  expect(() => space.is('speed', 'fast')).toThrow(RangeError);
  expect(() => space.is('feed', 'electric')).toThrow(RangeError);
  expect(() => space.fresh([{ value: 'a' }, { value: 'b' }], 'nameless')).toThrow(RangeError);
});

function keyOf(machine: Machine): string {
  return [...machine].map((entry) => entry.join('=')).join(';');
}

function machineOf(key: string): Machine {
  return new Map(
    key.split(';').map((entry) => {
      const [id = '', value = ''] = entry.split('=');
      return [id, value] as const;
    }),
  );
}
