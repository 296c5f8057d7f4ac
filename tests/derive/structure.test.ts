import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { gatherer, stepNumbers, timeText, workTime } from '../../src/derive/index.ts';
import { bookOf, linkedManual, procedureIn, sheetIn } from '../render/linked-manual.ts';
import { pumpManual } from '../render/pump-manual.ts';

const book = bookOf(pumpManual);

test('systems by name, those without one last; a sheet keeps the number that it was given', () => {
  expect(book.systems).toEqual([
    { name: 'Cooling', sheets: ['drain-coolant'] },
    { name: 'Pump', sheets: ['replace-impeller'] },
    { name: 'Other work', sheets: ['fill-coolant'] },
  ]);
  expect(book.sheets.map(({ documentNumber }) => documentNumber)).toEqual([
    'FP-40-drain-coolant',
    'FP-40-007',
    'FP-40-fill-coolant',
  ]);
});

test('the manual may give the order of its systems', () => {
  const text = pumpManual['manual.yaml'] ?? '';
  const manual = { ...pumpManual, 'manual.yaml': `${text}systems: [Pump]\n` };
  expect(bookOf(manual).systems.map(({ name }) => name)).toEqual(['Pump', 'Cooling', 'Other work']);
});

test('the order of the files changes nothing', () => {
  const shuffled = Object.fromEntries(Object.entries(pumpManual).reverse());
  expect(JSON.stringify(bookOf(shuffled))).toBe(JSON.stringify(book));
});

test('states at the end are in words', () => {
  const { leaves, starts } = sheetIn(book, 'replace-impeller');
  expect(leaves.map(({ item, state }) => [item.text, state])).toEqual([
    ['coolant', 'drained'],
    ['cover bolt', '4 out, 4 tight'],
  ]);
  expect(starts).toEqual([]);
});

test('a sheet knows what it performs and what performs it', () => {
  expect(sheetIn(book, 'replace-impeller').performs).toEqual([
    { href: 'procedures/drain-coolant/index.html', text: 'Drain the coolant' },
  ]);
  expect(sheetIn(book, 'drain-coolant').performedBy.map(({ text }) => text)).toEqual([
    'Replace the impeller',
  ]);
});

test('each entry of a machine says where and how it is used', () => {
  const entries = book.machines[0]?.groups.flatMap((group) => group.entries) ?? [];
  const used = (id: string) =>
    entries
      .find((entry) => entry.id === id)
      ?.usedIn.map(({ text, verbs }) => `${text}: ${verbs.join(' ')}`);
  expect(used('drain-plug')).toEqual(['Drain the coolant: remove install torque']);
  expect(used('gauge')).toEqual(['Replace the impeller: ']);
  expect(used('coolant')).toEqual(['Drain the coolant: drain', 'Fill the coolant: fill']);
  expect(used('hot-water')).toEqual(['Drain the coolant: ']);
  expect(used('clamp-screw')).toEqual([]);
});

describe('numbers of steps', () => {
  test('run through the whole sheet, with a point for steps inside steps', () => {
    const { procedure } = procedureIn(linkedManual(pumpManual), 'replace-impeller');
    const numbers = stepNumbers(procedure);
    expect(numbers.total()).toBe(9);
    expect(procedure.sections.map((section) => [section.id, numbers.total(section)])).toEqual([
      ['start', 0],
      ['removal', 4],
      ['reassembly', 5],
    ]);
    expect(numbers.byId('bolts-out')).toBe('2');
    expect(numbers.byId('impeller-out')).toBe('4.2');
    expect(numbers.byId('nowhere')).toBeUndefined();
  });
});

describe('procedures that perform each other', () => {
  const performing = (id: string, others: readonly string[]) =>
    `---\nprocedure: ${id}\ntitle: ${id}\n---\n\n1. Work.\n   ::step{time="1 min"}\n${others.map((other) => `1. ::perform{procedure=${other}}`).join('\n')}\n`;
  const minutes = (files: Record<string, string>, id: string) => {
    const manual = linkedManual({ 'manual.yaml': 'title: Cycles\n', ...files });
    return gatherer(manual, workTime)(procedureIn(manual, id)).minutes;
  };

  test('are cut where they come round', () => {
    const files = { 'a.md': performing('a', ['b']), 'b.md': performing('b', ['a', 'b']) };
    expect(minutes(files, 'a')).toBe(2);
  });

  test('count as often as they are performed', () => {
    const files = {
      'a.md': performing('a', ['b', 'b']),
      'b.md': performing('b', ['c', 'c']),
      'c.md': performing('c', []),
    };
    expect(minutes(files, 'a')).toBe(7);
  });

  test('cost no more than they are long, however deep they double', () => {
    const names = Array.from({ length: 40 }, (_, i) => `p${i}`);
    const files = Object.fromEntries(
      names.map((name, i) => {
        const next = names[i + 1];
        return [`${name}.md`, performing(name, next === undefined ? [] : [next, next])];
      }),
    );
    expect(minutes(files, 'p0')).toBe(2 ** 40 - 1);
  });
});

test('time is said in hours and minutes that add up, rounded up', () => {
  const whole = (minutes: number) => timeText({ minutes, isWhole: true });
  expect(whole(0)).toBeUndefined();
  expect(timeText({ minutes: 0, isWhole: false })).toBeUndefined();
  expect(whole(59.5)).toBe('1\u00a0h');
  expect(timeText({ minutes: 89, isWhole: false })).toBe('at least 1\u00a0h 29\u00a0min');
  fc.assert(
    fc.property(fc.integer({ min: 1, max: 100_000 }), (minutes) => {
      const [, h = '0'] = /(\d+)\u00a0h/.exec(whole(minutes) ?? '') ?? [];
      const [, min = '0'] = /(\d+)\u00a0min/.exec(whole(minutes) ?? '') ?? [];
      expect(Number(h) * 60 + Number(min)).toBe(minutes);
      expect(Number(min)).toBeLessThan(60);
    }),
  );
});

describe('the time of a job', () => {
  const time = (text: string) => {
    const other = '---\nprocedure: other\ntitle: Other\n---\n\n1. Work.\n   ::step{time="4 min"}\n';
    const head = '---\nprocedure: job\ntitle: Job\n---\n\n';
    const files = { 'manual.yaml': 'title: Times\n', 'other.md': other, 'job.md': head + text };
    const manual = linkedManual(files);
    return gatherer(manual, workTime)(procedureIn(manual, 'job'));
  };

  test.each([
    [
      'every step has one',
      '1. A.\n   ::step{time="2 min"}\n2. B.\n   ::step{time="3 min"}\n',
      5,
      true,
    ],
    ['a step has none', '1. A.\n   ::step{time="2 min"}\n2. B.\n', 2, false],
    ['a step performs a timed job', '1. ::perform{procedure=other}\n', 4, true],
    ['the steps inside a step have them', '1. A.\n   1. B.\n      ::step{time="2 min"}\n', 2, true],
    ['the step around them has one', '1. A.\n   ::step{time="2 min"}\n   1. B.\n', 2, true],
    ['a way that may be taken has none', '1. :::if[it leaks]\n   1. A.\n   :::\n', 0, false],
  ])('%s', (_, text, minutes, isWhole) => expect(time(text)).toEqual({ minutes, isWhole }));
});
