import { describe, expect, test } from 'vitest';
import { checkFolder } from '../../src/command/check-folder.ts';
import { makeBook, openBook } from '../../src/render/index.ts';

const { linked, report } = await checkFolder('content');
const whole = makeBook(linked, report, { draft: false });

describe('a book that is open', () => {
  test('gives the same whichever part is read first', () => {
    const book = openBook(linked, report, { draft: false });
    for (const sheet of whole.sheets.toReversed()) {
      const open = book.sheet(sheet.id);
      if (open === undefined) throw new Error(`there is no sheet ${sheet.id}`);
      const read = Object.entries(open).toReversed();
      expect(Object.fromEntries(read), sheet.id).toEqual(sheet);
    }
    expect(book.machines()).toEqual(whole.machines);
    const { sheets, machines, ...frame } = whole;
    expect({ ...book.frame }).toEqual(frame);
    expect(book.machineLinks.map(({ href }) => href)).toEqual(machines.map(({ href }) => href));
    expect(book.sheets().map(({ id }) => id)).toEqual(sheets.map(({ id }) => id));
  });

  test('makes each part once', () => {
    const book = openBook(linked, report, { draft: false });
    const [first] = whole.sheets;
    expect(book.sheet(first?.id ?? '')).toBe(book.sheets()[0]);
    expect(book.sheet(first?.id ?? '')?.pullFiles).toBe(book.sheets()[0]?.pullFiles);
  });

  test('has neither a sheet nor a machine that the manual has not', () => {
    const book = openBook(linked, report, { draft: false });
    expect(book.sheet('no-such')).toBeUndefined();
    expect(book.machine('no-such')).toBeUndefined();
  });

  test('is the same where another check hands out the same procedures again', () => {
    const procedures = new Map(linked.procedures);
    const [id = '', one] = [...procedures].at(-1) ?? [];
    if (one === undefined) throw new Error('the demo manual has no procedure');
    procedures.set(id, { ...one, item: one.item, section: one.section });
    expect(makeBook({ ...linked, procedures }, report, { draft: false })).toEqual(whole);
  });
});
