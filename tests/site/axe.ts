/// <reference lib="dom" />
import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import type { Page } from 'playwright-core';

/** Rules of WCAG up to 2.2, levels A and AA, and what axe-core holds to be good practice beside them. */
const tags = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'];
const source = await readFile(
  createRequire(import.meta.url).resolve('axe-core/axe.min.js'),
  'utf8',
);

/** What axe-core finds wrong on a page as it stands: the rule, then the start of each place. */
export async function violations(page: Page): Promise<string[]> {
  return await page.evaluate(
    async ([script, runOnly]) => {
      new Function(script)();
      const axe: Axe = Reflect.get(window, 'axe');
      const { violations: found } = await axe.run(document, { runOnly, preload: false });
      return found.map(({ id, nodes }) =>
        [id, ...nodes.slice(0, 3).map(({ html }) => html.slice(0, 160))].join(' | '),
      );
    },
    [source, tags] as const,
  );
}

interface Axe {
  run(
    context: Document,
    options: { readonly runOnly: readonly string[]; readonly preload: boolean },
  ): Promise<{ violations: readonly { id: string; nodes: readonly { html: string }[] }[] }>;
}
