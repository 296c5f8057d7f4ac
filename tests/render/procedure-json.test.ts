import { readFileSync } from 'node:fs';
import ucum from '@lhncbc/ucum-lhc';
import { Ajv } from 'ajv';
import { describe, expect, test } from 'vitest';
import type { ContentData, StepData } from '../../schemas/procedure-content.ts';
import { type ProcedureJson, procedureJsonSchema } from '../../schemas/procedure-json.ts';
import { type Book, makeBook } from '../../src/render/index.ts';
import { checked, type ManualName, manualFolders, manualFrom } from '../manuals/manual-from.ts';
import { check, onePage } from '../support/manual.ts';
import { elementsOf, ownText } from './html-tree.ts';
import { bookOf, sheetIn } from './linked-manual.ts';
import { pumpManual } from './pump-manual.ts';

const schemaFile = new URL('../../schemas/json/procedure.schema.json', import.meta.url);
const validate = new Ajv({ allErrors: true }).compile(JSON.parse(readFileSync(schemaFile, 'utf8')));

const dataIn = (book: Book, id: string): ProcedureJson =>
  procedureJsonSchema.parse(JSON.parse(sheetIn(book, id).dataFile.content));

const names: readonly ManualName[] = ['demo', 'lathe', 'hand-pump'];

describe.each(names)('each procedure of the manual %s', async (name) => {
  const { linked, report } = checked(await manualFrom(name));
  const book = makeBook(linked, report, { draft: false });

  test(`in ${manualFolders[name]} fits its schema, for zod and for ajv`, () => {
    expect(book.sheets.length).toBeGreaterThan(2);
    for (const { id, dataFile } of book.sheets) {
      const data: unknown = JSON.parse(dataFile.content);
      expect(procedureJsonSchema.parse(data), id).toEqual(data);
      validate(data);
      expect(validate.errors, id).toBeNull();
    }
  });

  test('has the numbers of its sheet, in their order', () => {
    for (const { id, bodyHtml } of book.sheets) {
      const shown = ownText(elementsOf(bodyHtml)).flatMap(
        ({ attributes }) => attributes['data-step'] ?? [],
      );
      const told = numbered(dataIn(book, id).sections.flatMap(({ content }) => content));
      expect(told, id).toEqual(shown);
    }
  });

  test('has units that the UCUM reference library knows, and bounds in order', () => {
    const reference = ucum.UcumLhcUtils.getInstance();
    const found = book.sheets.flatMap((sheet) => quantitiesIn(dataIn(book, sheet.id)));
    expect(found.length).toBeGreaterThan(20);
    for (const unit of new Set(found.map((one) => one.unit)))
      expect(reference.validateUnitString(unit).status, unit).toBe('valid');
    for (const { low = -Infinity, value = low, high = Infinity } of found) {
      expect(low).toBeLessThanOrEqual(value);
      expect(value).toBeLessThanOrEqual(high);
    }
  });

  test('has no reassembly that is not written out', () => {
    for (const { id, dataFile } of book.sheets)
      expect(dataFile.content, id).not.toContain('"type": "undo"');
  });
});

describe('the procedure of an invented pump', () => {
  const data = dataIn(bookOf(pumpManual), 'replace-impeller');
  const steps = data.sections.flatMap(({ content }) => content).filter(isStep);
  const step = (number: string): StepData => {
    const found = steps.find((one) => one.number === number);
    if (found === undefined) throw new Error(`no step ${number}`);
    return found;
  };

  test('says what it is', () => {
    expect(data).toMatchObject({
      manual: { title: 'Fenwater P40 pump, workshop manual' },
      id: 'replace-impeller',
      document: 'FP-40-007',
      revision: '3',
      machine: { id: 'pump', name: 'Fenwater P40' },
      people: 2,
      leaves: [
        { id: 'coolant', name: 'coolant', state: 'drained' },
        { id: 'cover-bolt', name: 'cover bolt', state: { out: 4, tight: 4 } },
      ],
      performs: [{ id: 'drain-coolant', title: 'Drain the coolant' }],
    });
  });

  test('has the job of another procedure in its step', () => {
    expect(step('1').content).toEqual([
      { type: 'perform', procedure: { id: 'drain-coolant', title: 'Drain the coolant' } },
    ]);
  });

  test('has the hazards before the step that they guard', () => {
    expect(step('4').hazards).toEqual([
      {
        signal: 'danger',
        hazard: 'The impeller can turn',
        harm: 'Amputation',
        avoid: 'Lock the shaft.',
      },
      { signal: 'notice', hazard: 'Grit', harm: 'Scored seal', avoid: 'Keep it clean.' },
    ]);
    expect(step('4').content).toMatchObject([
      { type: 'step', number: '4.1', words: 'Hold the hub.' },
      { type: 'step', number: '4.2', id: 'impeller-out', needs: ['bolts-out'] },
    ]);
  });

  test('has every stage of a torque, with what it says and as a number', () => {
    // 60 N·m × 0.737 562 149 lbf·ft/N·m = 44.25; 120 N·m = 88.5 (NIST SP 811, App. B.8).
    expect(step('6').content).toMatchObject([
      {
        type: 'torque',
        item: { id: 'hub-nut', name: 'hub nut' },
        words: 'Hold the hub.',
        torque: {
          threads: 'oiled',
          stages: [
            { does: 'tighten', to: { form: 'single', value: 60, unit: 'N.m' } },
            { does: 'back-off', by: { form: 'single', value: 0.5 } },
            {
              does: 'tighten-and-turn',
              to: { form: 'single', value: 120, unit: 'N.m' },
              by: { form: 'single', value: 90, unit: 'deg' },
            },
          ],
        },
      },
    ]);
    const words = step('8').actions.map(({ torque }) => torque?.stages[0]?.words);
    expect(words).toEqual([undefined, undefined, '45 N·m (33 lbf·ft)']);
  });

  test('has both bounds of what a reading must give', () => {
    expect(step('9').actions[0]?.limit?.quantity).toEqual({
      form: 'range',
      low: 0.3,
      high: 0.5,
      unit: 'mm',
    });
  });
});

test('choices, repeats and conditions keep their words and what is in them', () => {
  const items = 'parts:\n  belt: { name: belt }\n  cover: { name: cover }';
  const body = `
1. :::if[the belt is cracked]
   1. :replace{item=belt}.
   :::

:::repeat[until the belt runs true]
1. Turn the wheel once.
:::

:::when{feed=}
:::
`.replace(/:::when[^:]*:::\n/, ':::when[winch]\n1. :remove{item=cover}.\n:::\n');
  const { linked, report } = check({
    'manual.yaml': 'title: T\nvariants: { winch: [no, yes] }\n',
    'procedures/example.md': onePage(items, body),
  });
  const data = dataIn(makeBook(linked, report, { draft: true }), 'example');
  expect(data.draft).toBe(true);
  expect(data.sections[0]?.content).toMatchObject([
    {
      type: 'step',
      number: '1',
      content: [
        {
          type: 'choice',
          optional: true,
          ways: [{ if: 'the belt is cracked', content: [{ type: 'step', number: '1.1' }] }],
        },
      ],
    },
    { type: 'repeat', words: 'until the belt runs true', content: [{ number: '2' }] },
    {
      type: 'only',
      when: { condition: 'winch', words: 'for winch' },
      content: [{ number: '3', actions: [{ verb: 'remove', count: 1 }] }],
    },
  ]);
});

const isStep = (part: ContentData): part is StepData => part.type === 'step';

/** The numbers of a procedure in order of reading. */
function numbered(content: readonly ContentData[]): string[] {
  return content.flatMap((part): string[] => {
    const own = 'number' in part && part.number !== undefined ? [part.number] : [];
    if (part.type === 'choice') return part.ways.flatMap((way) => numbered(way.content));
    return 'content' in part ? [...own, ...numbered(part.content)] : own;
  });
}

interface Bounded {
  readonly unit: string;
  readonly low?: number;
  readonly value?: number;
  readonly high?: number;
}

/** Everything in some JSON that has a unit. */
function quantitiesIn(data: unknown): Bounded[] {
  if (Array.isArray(data)) return data.flatMap(quantitiesIn);
  if (typeof data !== 'object' || data === null) return [];
  const own = 'unit' in data && typeof data.unit === 'string' ? [{ ...data, unit: data.unit }] : [];
  return [...own, ...Object.values(data).flatMap(quantitiesIn)];
}
