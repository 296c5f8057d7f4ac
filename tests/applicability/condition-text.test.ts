import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  type Condition,
  type ConditionProblem,
  describeConditionProblem,
  parseCondition,
  printCondition,
} from '../../src/applicability/index.ts';
import { at, attributesArbitrary, conditionArbitrary } from './enumeration.ts';

/** The condition without its places, which printing changes. */
function bare(condition: Condition | undefined): unknown {
  return JSON.parse(
    JSON.stringify(condition ?? null, (key, value) =>
      key === 'start' || key === 'end' ? undefined : value,
    ),
  );
}

function canonical(text: string): string {
  const { value, problems } = parseCondition(text);
  expect(problems).toEqual([]);
  return value === undefined ? '' : printCondition(value);
}

/** The text with marks under the place of its one problem. */
function marked(text: string): string {
  const [problem] = parseCondition(text).problems;
  if (problem === undefined) return 'no problem';
  const { code, start, end } = problem;
  return `${text}\n${' '.repeat(start)}${'^'.repeat(Math.max(1, end - start))} ${code}`;
}

describe('reading', () => {
  test.each([
    ['feed = hydraulic & engine != petrol', 'feed = hydraulic & engine != petrol'],
    ['feed=hydraulic and not winch', 'feed = hydraulic & !winch'],
    ['a = x or b = y and c = z', 'a = x | (b = y & c = z)'],
    ['(a = x | b = y) & c = z', '(a = x | b = y) & c = z'],
    ['engine in (petrol, diesel)', 'engine in (petrol, diesel)'],
    ['engine not in (petrol,diesel)', 'engine not in (petrol, diesel)'],
    ['engine in (petrol)', 'engine = petrol'],
    ['NOT (engine = petrol)', '!(engine = petrol)'],
    ['!!winch', '!!winch'],
    ['"the belt is cracked" & winch', '"the belt is cracked" & winch'],
    ["engine = 'V 8'", 'engine = "V 8"'],
    ['model = "in"', 'model = "in"'],
    ['serial = 2.0-t/4+', 'serial = 2.0-t/4+'],
    ['never', 'never'],
  ])('%s', (text, printed) => {
    expect(canonical(text)).toBe(printed);
    expect(canonical(printed)).toBe(printed);
  });

  test('every node says where it stands', () => {
    const text = ' feed = hydraulic & !(winch | engine in (petrol, diesel)) ';
    const { value } = parseCondition(text);
    const places: string[] = [];
    const visit = (node: Condition): void => {
      places.push(`${node.kind}: ${text.slice(node.start, node.end)}`);
      if (node.kind === 'all' || node.kind === 'any') node.of.forEach(visit);
      if (node.kind === 'not') visit(node.of);
      if (node.kind === 'test') {
        for (const each of node.values) places.push(`value: ${text.slice(each.start, each.end)}`);
      }
    };
    if (value !== undefined) visit(value);
    expect(places).toEqual([
      'all: feed = hydraulic & !(winch | engine in (petrol, diesel))',
      'test: feed = hydraulic',
      'value: hydraulic',
      'not: !(winch | engine in (petrol, diesel))',
      'any: winch | engine in (petrol, diesel)',
      'bare: winch',
      'test: engine in (petrol, diesel)',
      'value: petrol',
      'value: diesel',
    ]);
  });

  test.each([
    ['feed = hydraulic &&  winch\n                 ^^ unexpected'],
    ['feed == hydraulic\n     ^^ unexpected'],
    ['feed: hydraulic\n    ^ unexpected'],
    ['feed hydraulic\n     ^^^^^^^^^ unexpected'],
    ['feed = \n       ^ incomplete'],
    ['feed = not\n       ^^^ unexpected'],
    ['(feed = hydraulic\n^ unclosed'],
    ['feed in (manual\n        ^ unclosed'],
    ['feed in manual\n        ^^^^^^ unexpected'],
    ['feed in (manual; hydraulic)\n                 ^^^^^^^^^ unexpected'],
    ['feed in ()\n         ^ unexpected'],
    ['winch)\n     ^ unexpected'],
    ['& winch\n^ unexpected'],
    ['winch &\n       ^ incomplete'],
    ['winch & "the belt\n        ^^^^^^^^^ unclosed'],
    ['year > 2010\n     ^ unexpected'],
    ['   \n^^^ empty'],
  ])('%s', (shown) => {
    expect(marked(shown.split('\n')[0] ?? '')).toBe(shown);
  });

  test('nesting has a limit instead of an end of memory', () => {
    for (const opening of ['(', '!', 'not ', '!(']) {
      const { problems } = parseCondition(`${opening.repeat(50_000)}winch`);
      expect(problems.map(({ code }) => code)).toEqual(['too-deep']);
    }
    const long = Array.from({ length: 20_000 }, () => 'winch').join(' & ');
    expect(parseCondition(long).problems).toEqual([]);
  });
});

describe('laws', () => {
  test('parse(print(c)) is c', () => {
    fc.assert(
      fc.property(attributesArbitrary.chain(conditionArbitrary), (condition) => {
        expect(bare(parseCondition(printCondition(condition)).value)).toEqual(bare(condition));
      }),
    );
  });

  test('parse(print(c)) is c for names of any signs', () => {
    const name = fc.string({ unit: 'grapheme' }).map((text) => ({ text, ...at }));
    fc.assert(
      fc.property(name, name, fc.boolean(), fc.string(), (attribute, value, negated, label) => {
        const compared: Condition = {
          kind: 'test',
          attribute,
          negated,
          values: [value, value],
          ...at,
        };
        const found: Condition = { kind: 'found', label, ...at };
        const condition: Condition = { kind: 'any', of: [compared, found], ...at };
        expect(bare(parseCondition(printCondition(condition)).value)).toEqual(bare(condition));
      }),
    );
  });

  test('any text is read or told apart, and every problem has a place and words', () => {
    const soup = fc
      .array(
        fc.constantFrom(
          ...['feed', 'winch', '=', '!=', '!', '&', '|', '(', ')', ',', 'in', 'not', 'and', 'or'],
          ...[' ', '"', "'", '\\', 'never', '==', '&&', ':', '<', '≠', '\u{1f527}', '\ud800'],
        ),
        { maxLength: 14 },
      )
      .map((pieces) => pieces.join(' '));
    fc.assert(
      fc.property(fc.oneof(soup, fc.string({ unit: 'binary' }), fc.string()), (text) => {
        const { value, problems } = parseCondition(text);
        if (value !== undefined) {
          expect(bare(parseCondition(printCondition(value)).value)).toEqual(bare(value));
          return;
        }
        expect(problems).toHaveLength(1);
        for (const problem of problems) {
          expect(problem.start).toBeGreaterThanOrEqual(0);
          expect(problem.start).toBeLessThanOrEqual(problem.end);
          expect(problem.end).toBeLessThanOrEqual(text.length);
          expect(describeConditionProblem(problem)).toMatch(/\.$/);
        }
      }),
      { numRuns: 2000 },
    );
  });
});

test('the words of each problem', () => {
  const place = { start: 0, end: 4 };
  const known = ['petrol', 'diesel'];
  const problems: readonly ConditionProblem[] = [
    { code: 'empty', ...place },
    { code: 'unexpected', found: '&&', expected: 'an operator', instead: '&', ...place },
    { code: 'incomplete', expected: 'a value', ...place },
    { code: 'unclosed', opened: '(', ...place },
    { code: 'too-deep', limit: 100, ...place },
    { code: 'unknown-attribute', name: 'fed', known: ['feed'], near: 'feed', owners: [], ...place },
    { code: 'unknown-attribute', name: 'diesel', known: ['feed'], owners: ['engine'], ...place },
    { code: 'unknown-value', attribute: 'engine', name: 'steam', known, ...place },
    { code: 'value-needed', attribute: 'engine', known, ...place },
    { code: 'unknown-branch', label: 'the belt is torn', known: [], ...place },
    { code: 'never-true', ...place },
    { code: 'always-true', ...place },
  ];
  expect(problems.map(describeConditionProblem)).toEqual([
    'The condition is empty; write one such as “feed = hydraulic”, or leave “when” out.',
    '“&&” cannot stand here; “&”, “|” or the end of the condition is expected. Write “&” instead.',
    'The condition breaks off; a value is expected (put it in quotation marks if it has spaces or signs) at its end.',
    '“(” is opened and never closed; add the closing bracket.',
    'The condition is nested more than 100 deep; write it flatter.',
    '“fed” is not a variant attribute of this manual; perhaps “feed” is meant.',
    '“diesel” is not a variant attribute of this manual; it is a value: write “engine = diesel”.',
    '“steam” is not a value of “engine”; choose from “petrol”, “diesel”.',
    '“engine” is not a yes/no attribute, so its name alone says nothing; add a value: “engine = petrol”, “engine = diesel”.',
    'No branch before this place is called “the belt is torn”; there is none to choose from.',
    'The condition is false for every machine of this manual; correct it, or take out what it guards.',
    'The condition is true for every machine of this manual; correct it, or leave it out.',
  ]);
});
