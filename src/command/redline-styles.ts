import { readFile } from 'node:fs/promises';
import { packageFile } from './package-root.ts';

/** The look of the sheets, as far as a redline has of it, and its own. */
const sheets = ['ink', 'paper', 'title-block', 'print-page', 'print', 'redline'];

/** The style sheet of a redline page, so that the page is one file. */
export async function pageStyles(): Promise<string> {
  const texts = await Promise.all(
    sheets.map((name) => readFile(packageFile('site', 'styles', `${name}.css`), 'utf8')),
  );
  return texts.join('\n');
}
