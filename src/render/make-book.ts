import type { Report } from '../../schemas/report.ts';
import type { LinkedManual } from '../link/index.ts';
import type { Book } from './book.ts';
import { openBook } from './open-book.ts';

/** Everything that the site shows, made from a linked manual. Same input, same bytes. */
export function makeBook(manual: LinkedManual, report: Report, options: { draft: boolean }): Book {
  const book = openBook(manual, report, options);
  const sheets = book.sheets().map((sheet) => ({ ...sheet }));
  return { ...book.frame, sheets, machines: book.machines() };
}
