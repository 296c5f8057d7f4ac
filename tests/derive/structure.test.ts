import { describe, expect, test } from 'vitest';
import { stepNumbers, workTimes } from '../../src/derive/index.ts';
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
      ['start', 9],
      ['removal', 4],
      ['reassembly', 5],
    ]);
    expect(numbers.byId('bolts-out')).toBe('2');
    expect(numbers.byId('impeller-out')).toBe('4.2');
    expect(numbers.byId('nowhere')).toBeUndefined();
  });
});

test('steps of a section count those of the sections below it', () => {
  const text = '## A\n\n1. A.\n\n### B\n\n1. B.\n2. C.\n\n## D\n\n1. D.\n';
  const manual = linkedManual({
    'manual.yaml': 'title: Sections\n',
    'p.md': `---\nprocedure: p\ntitle: P\n---\n\n${text}`,
  });
  const { procedure } = procedureIn(manual, 'p');
  const numbers = stepNumbers(procedure);
  expect(procedure.sections.map(({ id }) => id)).toEqual(['a', 'b', 'd']);
  expect(procedure.sections.map((section) => numbers.total(section))).toEqual([3, 2, 1]);
});

describe('procedures that perform each other', () => {
  const performing = (id: string, others: readonly string[]) =>
    `---\nprocedure: ${id}\ntitle: ${id}\n---\n\n1. Work.\n   ::step{time="1 min"}\n${others.map((other) => `1. ::perform{procedure=${other}}`).join('\n')}\n`;
  const minutes = (files: Record<string, string>, id: string) => {
    const manual = linkedManual({ 'manual.yaml': 'title: Cycles\n', ...files });
    const [time] = workTimes(manual)(procedureIn(manual, id));
    return time?.duration.work;
  };

  test('are cut where they come round', () => {
    const files = { 'a.md': performing('a', ['b']), 'b.md': performing('b', ['a', 'b']) };
    expect(minutes(files, 'a')).toBe(2);
  });

  test('may perform one of their own sections again', () => {
    const step = '1. Work.\n   ::step{time="1 min"}\n';
    const text = `## Left\n\n${step}\n## Right\n\n1. ::perform{procedure=a part=left}\n`;
    const files = { 'a.md': `---\nprocedure: a\ntitle: A\n---\n\n${text}` };
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
