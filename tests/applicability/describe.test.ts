import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  type Attribute,
  type Condition,
  createSpace,
  parseCondition,
  printCondition,
  resolveCondition,
  type Space,
  type VariantSet,
} from '../../src/applicability/index.ts';
import { caseOf, caseWith, conditionArbitrary, holds, machinesOf } from './enumeration.ts';

const engine: Attribute = { id: 'engine', values: ['petrol', 'diesel', 'electric'] };
const feed: Attribute = { id: 'feed', values: ['manual', 'hydraulic'] };
const cooling: Attribute = { id: 'cooling', values: ['air', 'liquid'] };
const winch: Attribute = { id: 'winch', values: ['yes', 'no'] };
const wheels: Attribute = { id: 'wheels', values: ['two', 'three', 'four', 'six'] };

function parsed(text: string): Condition {
  const { value } = parseCondition(text);
  if (value === undefined) throw new Error(`not a condition: ${text}`);
  return value;
}

function setOf(space: Space, text: string): VariantSet {
  return resolveCondition(space, parsed(text)).value;
}

/** The description as printed; the words for what is no condition in square brackets. */
function said(space: Space, set: VariantSet, within?: VariantSet): string {
  const description = space.describe(set, within);
  if (description === undefined) return '[everything]';
  return description === 'too-long' ? '[too long]' : printCondition(description);
}

/** How many names a condition takes: each value named, each bare attribute, each label. */
function namesIn(condition: Condition): number {
  switch (condition.kind) {
    case 'test':
      return condition.values.length;
    case 'not':
      return namesIn(condition.of);
    case 'all':
    case 'any':
      return condition.of.reduce((sum, part) => sum + namesIn(part), 0);
    default:
      return 1;
  }
}

describe('the manual’s own words', () => {
  const { space } = createSpace([engine, feed, cooling, winch, wheels], []);

  test.each([
    ['feed = hydraulic', 'feed = hydraulic'],
    ['feed != manual', 'feed = hydraulic'],
    ['engine = diesel | engine = electric', 'engine != petrol'],
    ['engine != petrol & engine != electric', 'engine = diesel'],
    ['wheels != two & wheels != six', 'wheels in (three, four)'],
    ['wheels in (two, three, six)', 'wheels != four'],
    ['winch = yes', 'winch'],
    ['winch != yes', '!winch'],
    ['winch & feed = manual | winch & feed = hydraulic', 'winch'],
    ['winch & feed = manual | !winch & feed = hydraulic & feed = manual', 'feed = manual & winch'],
    ['winch | !winch & feed = manual', 'feed = manual | winch'],
    ['!(winch & feed = manual)', 'feed = hydraulic | !winch'],
    ['winch & feed = manual | wheels = two', '(feed = manual & winch) | wheels = two'],
    // Demands, where alternatives would say something twice.
    [
      'feed = manual & winch | feed = manual & wheels = two',
      'feed = manual & (winch | wheels = two)',
    ],
    [
      '(feed = manual | winch) & (cooling = air | wheels = two)',
      '(feed = manual | winch) & (cooling = air | wheels = two)',
    ],
    ['winch | !winch', '[everything]'],
    ['winch & !winch', 'never'],
  ])('%s', (text, words) => {
    expect(said(space, setOf(space, text))).toBe(words);
  });

  test('what the reader knows already is left out', () => {
    const within = setOf(space, 'engine = diesel & feed = hydraulic');
    expect(said(space, setOf(space, 'engine = diesel & winch'), within)).toBe('winch');
    expect(said(space, setOf(space, 'feed = hydraulic'), within)).toBe('[everything]');
    expect(said(space, setOf(space, 'feed = manual'), within)).toBe('never');
  });

  test('machines that do not exist are not talked about', () => {
    const constrained = createSpace(
      [engine, feed, cooling, winch],
      ['engine = petrol & cooling = liquid', 'engine = electric & cooling = liquid'].map(parsed),
    ).space;
    const liquid = setOf(constrained, 'cooling = liquid');
    expect(said(constrained, liquid)).toBe('cooling = liquid');
    expect(
      said(constrained, setOf(constrained, 'engine = diesel & cooling = liquid & winch')),
    ).toBe('cooling = liquid & winch');
    expect(said(constrained, setOf(constrained, 'engine = diesel & cooling = air'))).toBe(
      'engine = diesel & cooling = air',
    );
    const tied = createSpace(
      [feed, cooling],
      ['feed = manual & cooling = liquid', 'feed = hydraulic & cooling = air'].map(parsed),
    ).space;
    expect(said(tied, tied.is('cooling', 'liquid'))).toBe('feed = hydraulic');
  });
});

describe('branches', () => {
  const { space } = createSpace([engine, winch], []);
  const belt = space.fresh(
    [{ value: 'yes', label: 'the belt is cracked' }, { value: 'no' }],
    'belt',
  );
  const hose = space.fresh(
    [
      { value: 'sound', label: 'the hose is sound' },
      { value: 'worn', label: 'the hose is worn' },
      { value: 'burst', label: 'the hose has burst' },
    ],
    'hose',
  );

  test('are told by their labels', () => {
    const cracked = space.is(belt.id, 'yes');
    expect(said(space, cracked)).toBe('"the belt is cracked"');
    expect(said(space, space.not(cracked))).toBe('!"the belt is cracked"');
    expect(said(space, space.and(cracked, space.is('winch', 'no')))).toBe(
      '!winch & "the belt is cracked"',
    );
    expect(said(space, space.is(hose.id, 'worn'))).toBe('"the hose is worn"');
    expect(said(space, space.isIn(hose.id, ['worn', 'burst']))).toBe('!"the hose is sound"');
    expect(said(space, space.and(space.isIn(hose.id, ['worn', 'burst']), cracked))).toBe(
      '"the belt is cracked" & !"the hose is sound"',
    );
  });

  test('a way without a label is none of the others', () => {
    const plug = space.fresh(
      [
        { value: 'oily', label: 'the plug is oily' },
        { value: 'sooty', label: 'the plug is sooty' },
        { value: 'else' },
      ],
      'plug',
    );
    expect(said(space, space.is(plug.id, 'else'))).toBe(
      '!"the plug is oily" & !"the plug is sooty"',
    );
    expect(said(space, space.not(space.is(plug.id, 'else')))).toBe(
      '"the plug is oily" | "the plug is sooty"',
    );
    expect(said(space, space.isIn(plug.id, ['else', 'oily']))).toBe('!"the plug is sooty"');
  });

  test('the description of a branch means that branch, whatever else bears its label', () => {
    const other = space.fresh(
      [{ value: 'yes', label: 'the belt is cracked' }, { value: 'no' }],
      'belt',
    );
    for (const { id } of [belt, other]) {
      const set = space.is(id, 'yes');
      const description = space.describe(set);
      if (description === undefined || description === 'too-long')
        throw new Error('a condition is expected');
      expect(resolveCondition(space, description).value).toBe(set);
    }
  });
});

describe('laws', () => {
  test('a description is equal to its set within the machines it is told for', () => {
    fc.assert(
      fc.property(caseWith(2), fc.boolean(), ({ given, conditions }, everywhere) => {
        const { space, machines } = given;
        const [told, known] = conditions;
        if (told === undefined || known === undefined) throw new Error('two conditions are needed');
        const within = everywhere ? space.all : resolveCondition(space, known).value;
        const relevant = everywhere ? machines : machines.filter((each) => holds(known, each));
        const description = space.describe(resolveCondition(space, told).value, within);
        if (description === undefined) {
          expect(relevant.every((each) => holds(told, each))).toBe(true);
          return;
        }
        if (description === 'too-long') throw new Error('so small a space can be told');
        for (const machine of relevant)
          expect(holds(description, machine)).toBe(holds(told, machine));
        const again = parseCondition(printCondition(description)).value;
        expect(again && printCondition(again)).toBe(printCondition(description));
      }),
      { numRuns: 300 },
    );
  });

  test.each([
    { shape: 'two of three values', attributes: [engine, { ...engine, id: 'spare' }] },
    { shape: 'three yes/no', attributes: ['a', 'b', 'c'].map((id) => ({ ...winch, id })) },
    { shape: 'mixed', attributes: [winch, engine, feed] },
  ])('no shorter list of alternatives exists: $shape', ({ attributes }) => {
    const pair = fc.tuple(conditionArbitrary(attributes), conditionArbitrary(attributes));
    fc.assert(
      fc.property(pair, ([told, never]) => {
        const given = caseOf(attributes, [never]);
        fc.pre(given.machines.length > 0);
        const description = given.space.describe(resolveCondition(given.space, told).value);
        if (description === undefined || description === 'too-long') return;
        if (description.kind === 'never') return;
        expect(namesIn(description)).toBeLessThanOrEqual(
          fewestNames(
            attributes,
            (machine) => given.machines.some((each) => sameMachine(each, machine)),
            (machine) => holds(told, machine),
          ),
        );
      }),
      { numRuns: 60 },
    );
  });
});

function sameMachine(a: ReadonlyMap<string, string>, b: ReadonlyMap<string, string>): boolean {
  return [...a].every(([id, value]) => b.get(id) === value);
}

/**
 * The fewest names that alternatives of tests can take, found by trying every union of every cube:
 * shortest paths over the sets of covered machines as bits.
 */
function fewestNames(
  attributes: readonly Attribute[],
  exists: (machine: ReadonlyMap<string, string>) => boolean,
  wanted: (machine: ReadonlyMap<string, string>) => boolean,
): number {
  const machines = machinesOf(attributes);
  const bits = (test: (machine: ReadonlyMap<string, string>) => boolean): number =>
    machines.reduce((mask, machine, index) => (test(machine) ? mask | (1 << index) : mask), 0);
  const target = bits((machine) => exists(machine) && wanted(machine));
  const forbidden = bits((machine) => exists(machine) && !wanted(machine));
  let cubes: readonly { readonly mask: number; readonly names: number }[] = [
    { mask: -1, names: 0 },
  ];
  for (const { id, values } of attributes) {
    const tests = Array.from({ length: 2 ** values.length - 1 }, (_, index) => {
      const passing = values.filter((_value, place) => ((index + 1) >> place) & 1);
      return {
        mask: bits((machine) => passing.includes(machine.get(id) ?? '')),
        names: Math.min(passing.length, values.length - passing.length),
      };
    });
    cubes = cubes.flatMap((cube) =>
      tests.map((each) => ({ mask: cube.mask & each.mask, names: cube.names + each.names })),
    );
  }
  const useful = cubes.filter(({ mask }) => (mask & forbidden) === 0 && (mask & target) !== 0);
  const best = new Map<number, number>([[0, 0]]);
  let frontier: readonly number[] = [0];
  while (frontier.length > 0) {
    const reached = new Set<number>();
    for (const covered of frontier) {
      for (const { mask, names } of useful) {
        const next = covered | (mask & target);
        const total = (best.get(covered) ?? 0) + names;
        if (total < (best.get(next) ?? Number.POSITIVE_INFINITY)) {
          best.set(next, total);
          reached.add(next);
        }
      }
    }
    frontier = [...reached];
  }
  return best.get(target) ?? 0;
}
