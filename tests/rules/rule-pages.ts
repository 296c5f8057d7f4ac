import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { type RulePage, readPage } from '../../src/rules/index.ts';
import { type Family, families } from './families.ts';

export const rulesFolder = join(import.meta.dirname, '../../src/rules');

/** A file of a family's folder: `left-out` with `.ts` or `.md`. */
export function idsIn(family: Family, ending: '.ts' | '.md'): string[] {
  return readdirSync(join(rulesFolder, family))
    .filter((name) => name.endsWith(ending))
    .map((name) => name.slice(0, -ending.length))
    .sort();
}

export interface Page extends RulePage {
  readonly id: string;
  readonly family: Family;
  readonly markdown: string;
}

export const pages: readonly Page[] = families.flatMap((family) =>
  idsIn(family, '.md').map((id) => {
    const markdown = readFileSync(join(rulesFolder, family, `${id}.md`), 'utf8');
    return { id, family, markdown, ...readPage(markdown) };
  }),
);
