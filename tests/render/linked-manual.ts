import { readManual } from '../../src/catalogue/index.ts';
import { type LinkedManual, type LinkedProcedure, linkManual } from '../../src/link/index.ts';
import { type Book, makeBook, type Sheet } from '../../src/render/index.ts';
import { parseProcedure } from '../../src/syntax/index.ts';

/** A manual from the texts of its files, by path. */
export function linkedManual(files: Readonly<Record<string, string>>): LinkedManual {
  const texts = Object.entries(files).map(([path, text]) => ({ path, text }));
  const folder = { texts, unreadable: [], others: [] };
  const procedures = texts
    .filter(({ path }) => path.endsWith('.md'))
    .flatMap((file) => parseProcedure(file).value ?? []);
  return linkManual(readManual(folder).value, procedures, folder).value;
}

export function procedureIn(manual: LinkedManual, id: string): LinkedProcedure {
  const one = manual.procedures.get(id);
  if (one === undefined) throw new Error(`the test manual has no procedure ${id}`);
  return one;
}

export function bookOf(files: Readonly<Record<string, string>>): Book {
  const report = {
    tool: { name: 'tallybolt' as const, version: '0.0.0' },
    manual: { title: 'test', procedures: 0, steps: 0, actions: 0 },
    findings: [],
    waivers: [],
    summary: { error: 0, warning: 0, note: 0, waived: 0 },
  };
  return makeBook(linkedManual(files), report, { draft: true });
}

export function sheetIn(book: Book, id: string): Sheet {
  const sheet = book.sheets.find((one) => one.id === id);
  if (sheet === undefined) throw new Error(`the book has no sheet ${id}`);
  return sheet;
}
