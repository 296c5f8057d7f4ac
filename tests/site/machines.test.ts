import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { choiceIn, choiceWords, queryWith } from '../../site/scripts/choice-text.ts';
import { always, type Choice, Machines, truth } from '../../site/scripts/machines.ts';
import {
  createSpace,
  type MachineCondition,
  machineCondition,
  parseCondition,
  resolveCondition,
} from '../../src/applicability/index.ts';
import { setCondition } from '../../src/derive/index.ts';
import { type Case, caseWith, holds, type Machine } from '../applicability/enumeration.ts';

function machinesFor({ attributes, constraints, space }: Case, within?: MachineCondition) {
  const never = constraints
    .map((condition) => machineCondition(condition, space))
    .filter((condition) => condition !== undefined);
  const named = attributes.map(({ id, values }) => ({ id, name: id, values }));
  return new Machines({ attributes: named, never }, within);
}

/** A case with conditions, and a value for some of its attributes, allowed together or not. */
const chosen = (conditions: number) =>
  caseWith(conditions).chain((one) =>
    fc
      .tuple(
        ...one.given.attributes.map(({ id, values }) =>
          fc.option(fc.constantFrom(...values).map((value) => [id, value] as const)),
        ),
      )
      .map((pairs) => ({ ...one, choice: new Map(pairs.filter((pair) => pair !== null)) })),
  );

const agrees = (machine: Machine, choice: Choice): boolean =>
  [...choice].every(([id, value]) => machine.get(id) === value);

describe('a condition held against a choice', () => {
  test('is possible just where one of the allowed machines with that choice meets it', () => {
    fc.assert(
      fc.property(chosen(2), ({ given, conditions: [condition, scope], choice }) => {
        if (condition === undefined || scope === undefined) throw new Error('two are needed');
        const left = given.machines.filter((one) => agrees(one, choice) && holds(scope, one));
        const machines = machinesFor(given, machineCondition(scope, given.space));
        // A page for no machine at all is a fault of the manual, which the check tells.
        fc.pre(given.machines.some((one) => holds(scope, one)));
        const encoded = machineCondition(condition, given.space) ?? always;
        expect(machines.isPossible(encoded, choice)).toBe(
          left.some((one) => holds(condition, one)),
        );
        expect(machines.isCertain(encoded, choice)).toBe(
          left.every((one) => holds(condition, one)),
        );
      }),
    );
  });

  test('hides a set just where set and choice have no machine in common', () => {
    fc.assert(
      fc.property(chosen(1), ({ given, conditions: [condition], choice }) => {
        if (condition === undefined) throw new Error('one is needed');
        const { space } = given;
        const { value: set } = resolveCondition(space, condition);
        const common = [...choice].reduce((all, [id, v]) => space.and(all, space.is(id, v)), set);
        const encoded = setCondition(set, space.all, space);
        const isShown = machinesFor(given).isPossible(encoded ?? always, choice);
        const isChoice = machinesFor(given).isPossible(always, choice);
        expect(isShown && isChoice).toBe(common !== space.none);
      }),
    );
  });

  test('what a technician finds decides nothing', () => {
    const [found, winch] = [['?'], ['=', 'winch', 'yes']] as const;
    const machines = new Machines({
      attributes: [{ id: 'winch', name: 'winch', values: ['no', 'yes'] }],
      never: [],
    });
    const yes = new Map([['winch', 'yes']]);
    const no = new Map([['winch', 'no']]);
    for (const condition of [found, ['!', found], ['&', winch, found], ['|', found]] as const) {
      expect(truth(condition, yes)).toBeUndefined();
      expect(machines.isPossible(condition, yes)).toBe(true);
      expect(machines.isCertain(condition, yes)).toBe(false);
    }
    expect(machines.isPossible(['&', winch, found], no)).toBe(false);
    expect(machines.isCertain(['|', winch, found], yes)).toBe(true);
  });

  test('a search that takes too long shows too much, never too little', () => {
    // Nine things, eight places, no two in one: no machine, but no short way to see it.
    const values = Array.from({ length: 8 }, (_, i) => `p${i}`);
    const ids = Array.from({ length: 9 }, (_, i) => `t${i}`);
    const clash = ids.flatMap((a, i) =>
      ids.slice(i + 1).flatMap((b) => values.map((v) => ['&', ['=', a, v], ['=', b, v]] as const)),
    );
    const attributes = ids.map((id) => ({ id, name: id, values }));
    const machines = new Machines({ attributes, never: clash });
    expect(machines.isPossible(['=', 't0', 'p0'], new Map())).toBe(true);
    expect(machines.isPossible(['=', 't0', 'p0'], new Map([['t0', 'p1']]))).toBe(false);
  });

  test('a manual that allows no machine is taken to allow all', () => {
    const attributes = [{ id: 'a', name: 'a', values: ['x', 'y'] }];
    const machines = new Machines({ attributes, never: [['=', 'a', 'x', 'y']] });
    expect(machines.isPossible(['=', 'a', 'x'], new Map())).toBe(true);
    expect(machines.isPossible(['=', 'a', 'x'], new Map([['a', 'y']]))).toBe(false);
  });
});

describe('a choice', () => {
  test('leaves the values that allowed machines have, and settles what has only one left', () => {
    fc.assert(
      fc.property(chosen(0), ({ given, choice: asked }) => {
        const machines = machinesFor(given);
        const choice = machines.allowed(asked);
        const left = given.machines.filter((one) => agrees(one, choice));
        expect(left.length).toBeGreaterThan(0);
        const settled = machines.settled(choice);
        for (const { id } of given.attributes) {
          const others = new Map(choice);
          others.delete(id);
          const possible = given.machines.filter((one) => agrees(one, others));
          expect(new Set(machines.valuesLeft(id, choice))).toEqual(
            new Set(possible.map((one) => one.get(id))),
          );
          const values = new Set(left.map((one) => one.get(id)));
          expect(settled.get(id)).toBe(values.size === 1 ? [...values][0] : undefined);
        }
      }),
    );
  });

  test('takes as much of what was asked for as one machine can have, in the order of the manual', () => {
    fc.assert(
      fc.property(chosen(0), ({ given, choice: asked }) => {
        const choice = machinesFor(given).allowed(asked);
        for (const [id, value] of choice) expect(asked.get(id)).toBe(value);
        if (given.machines.some((one) => agrees(one, asked))) expect(choice).toEqual(asked);
      }),
    );
  });

  const attributes = [
    { id: 'winch', name: 'infeed winch', values: ['no', 'yes'] },
    { id: 'brakes', name: 'brakes', values: ['overrun', 'none'] },
    { id: 'air-cleaner', name: 'air cleaner', values: ['single', 'two-stage'] },
  ];
  const { space } = createSpace(
    attributes.map(({ id, values }) => ({ id, values: [values[0] ?? '', ...values.slice(1)] })),
    [],
  );
  const never = [machineCondition(parseCondition('winch & brakes = none').value, space) ?? always];
  const machines = new Machines({ attributes, never });

  test('in words names every attribute, with what follows from it', () => {
    const settled = machines.settled(new Map([['winch', 'yes']]));
    expect(choiceWords(machines, settled, 'all')).toBe(
      'infeed winch: yes; brakes: overrun; air cleaner: any',
    );
    expect(choiceWords(machines, new Map(), 'all')).toBe('all');
  });

  test('in words does not list many that are open', () => {
    const many = Array.from({ length: 6 }, (_, i) => ({
      id: `a${i}`,
      name: `a${i}`,
      values: ['x', 'y'],
    }));
    const words = choiceWords(
      new Machines({ attributes: many, never: [] }),
      new Map([['a2', 'y']]),
      '',
    );
    expect(words).toBe('a2: y; all else: any');
  });

  test('goes into an address and comes out again, other parameters left alone', () => {
    const choice = new Map([
      ['winch', 'yes'],
      ['air-cleaner', 'two-stage'],
    ]);
    expect(queryWith('?hour=3&winch=no', machines, choice)).toBe(
      '?hour=3&winch=yes&air-cleaner=two-stage',
    );
    expect(choiceIn('?hour=3&winch=yes&air-cleaner=two-stage&brakes=drum', machines)).toEqual(
      choice,
    );
    expect(choiceIn('?hour=3&brakes=drum', machines)).toBeUndefined();
    expect(queryWith('?winch=no', machines, new Map())).toBe('');
  });
});
