import { describe, expect, test } from 'vitest';
import {
  type Attribute,
  type Condition,
  createSpace,
  describeSpaceProblem,
  parseCondition,
  resolveCondition,
} from '../../src/applicability/index.ts';

const attributes: readonly Attribute[] = [
  { id: 'engine', values: ['petrol', 'diesel', 'electric'] },
  { id: 'feed', values: ['manual', 'hydraulic'] },
  { id: 'cooling', values: ['air', 'liquid'] },
  { id: 'winch', values: ['no', 'yes'] },
];

function parsed(text: string): Condition {
  const { value } = parseCondition(text);
  if (value === undefined) throw new Error(`not a condition: ${text}`);
  return value;
}

const never = ['engine = petrol & cooling = liquid', 'engine = electric & cooling = liquid'];
const { space } = createSpace(attributes, never.map(parsed));

function resolved(text: string) {
  return resolveCondition(space, parsed(text));
}

/** Code of each problem with the text it points at. */
function told(text: string): readonly string[] {
  return resolved(text).problems.map(
    ({ code, start, end }) => `${code}: ${text.slice(start, end)}`,
  );
}

describe('resolveCondition', () => {
  test('conditions that mean the same give the same set', () => {
    const { value } = resolved('engine = diesel & winch');
    for (const text of [
      'winch & !(engine in (petrol, electric))',
      'not (winch = no | engine != diesel)',
    ]) {
      expect(resolved(text)).toEqual({ value, problems: [] });
      expect(resolved(text).value).toBe(value);
    }
    expect(resolved('cooling = liquid').value).toBe(
      resolved('engine = diesel & cooling = liquid').value,
    );
  });

  test('unknown names, each at its place', () => {
    expect(told('fed = manual & engine = desel')).toEqual([
      'unknown-attribute: fed',
      'unknown-value: desel',
    ]);
    expect(told('hydraulic')).toEqual(['unknown-attribute: hydraulic']);
    expect(told('winch & engine')).toEqual(['value-needed: engine']);
    expect(told('engine in (diesel, steam, coal)')).toEqual([
      'unknown-value: steam',
      'unknown-value: coal',
    ]);
    expect(resolved('fed = manual').problems).toStrictEqual([
      {
        code: 'unknown-attribute',
        name: 'fed',
        known: ['engine', 'feed', 'cooling', 'winch'],
        owners: [],
        near: 'feed',
        start: 0,
        end: 3,
      },
    ]);
    expect(resolved('hydraulic').problems).toMatchObject([{ owners: ['feed'] }]);
    expect(resolved('engine = desel').problems).toMatchObject([{ near: 'diesel' }]);
  });

  test('an unknown name is told once and holds for every machine', () => {
    expect(resolved('!(fed = manual)').value).toBe(space.all);
    expect(told('!(fed = manual)')).toEqual(['unknown-attribute: fed']);
  });

  test('always and never true, also by the constraints', () => {
    expect(told('engine = petrol & cooling = liquid')).toEqual([
      'never-true: engine = petrol & cooling = liquid',
    ]);
    expect(told('winch & !winch')).toEqual(['never-true: winch & !winch']);
    expect(told('never')).toEqual(['never-true: never']);
    expect(told('cooling = air | engine = diesel')).toEqual([
      'always-true: cooling = air | engine = diesel',
    ]);
    expect(told('cooling = air')).toEqual([]);
  });

  test('the label of a branch holds where the branch is in reach', () => {
    const way = { value: 'yes', label: 'the belt is cracked' };
    const belt = space.fresh([way, { value: 'no' }], 'belt');
    const cracked = space.is(belt.id, 'yes');
    const labels = new Map([[way.label, cracked]]);
    const condition = parsed('"the belt is cracked"');
    expect(resolveCondition(space, condition, labels).value).toBe(cracked);
    expect(resolveCondition(space, condition).problems).toMatchObject([
      { code: 'unknown-branch', known: [] },
    ]);
    expect(resolveCondition(space, parsed('"the belt is craked"'), labels).problems).toMatchObject([
      { code: 'unknown-branch', near: 'the belt is cracked' },
    ]);
    expect(resolveCondition(space, parsed(`"${belt.id}" = yes`)).problems).toMatchObject([
      { code: 'unknown-attribute' },
    ]);
  });
});

describe('createSpace', () => {
  test('constraints remove machines', () => {
    expect(space.count(space.all)).toBe(BigInt(4 * 2 * 2));
    expect(space.describe(space.is('cooling', 'liquid'))).toMatchObject({
      attribute: { text: 'cooling' },
    });
  });

  test('a constraint that leaves no machine is reported and not applied', () => {
    const made = createSpace(attributes, ['winch', 'engine = diesel', '!winch'].map(parsed));
    expect(made.problems).toEqual([{ code: 'no-machine-left', constraint: 2 }]);
    expect(made.space.count(made.space.all)).toBe(8n);
    const everything = createSpace(attributes, [parsed('winch | !winch')]);
    expect(everything.problems).toEqual([{ code: 'no-machine-left', constraint: 0 }]);
  });

  test('faults in the declarations', () => {
    const made = createSpace(
      [
        ...attributes,
        { id: 'feed', values: ['foot'] },
        { id: 'size', values: ['s', 'm', 's', 's'] },
      ],
      ['size = xl', 'winch & !winch'].map(parsed),
    );
    expect(made.problems.map(describeSpaceProblem)).toEqual([
      'The variant attribute “feed” is declared twice; the first one counts, so rename or drop the other.',
      'The variant attribute “size” has the value “s” twice; drop one.',
      '“xl” is not a value of “size”; choose from “s”, “m”.',
      'This “never” line is false for every machine, so it rules nothing out; correct it or drop it.',
    ]);
    expect(made.space.attribute('feed')?.values).toEqual(['manual', 'hydraulic']);
    expect(made.space.attribute('size')?.values).toEqual(['s', 'm']);
  });

  test('a manual without variants has one machine', () => {
    const made = createSpace([], []);
    expect(made.problems).toEqual([]);
    expect(made.space.count(made.space.all)).toBe(1n);
    expect(made.space.describe(made.space.all)).toBeUndefined();
    expect(made.space.pick(made.space.all)).toEqual(new Map());
  });
});
