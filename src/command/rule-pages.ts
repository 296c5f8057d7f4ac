import { readFile } from 'node:fs/promises';
import type { DescribedRule } from '../report/index.ts';
import { rules } from '../rules/index.ts';
import { packageFile } from './package-root.ts';

/** All rules with the Markdown of their pages. */
export function describedRules(): Promise<DescribedRule[]> {
  return Promise.all(
    rules.map(async ({ id, family, level }) => {
      const page = await readFile(packageFile('src', 'rules', family, `${id}.md`), 'utf8');
      return { id, family, level, page };
    }),
  );
}
