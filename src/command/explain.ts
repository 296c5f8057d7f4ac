import { readFile } from 'node:fs/promises';
import { rules } from '../rules/index.ts';
import type { ExitCode } from './exit-code.ts';
import { packageFile } from './package-root.ts';
import { ruleCalled } from './rule-called.ts';
import { say } from './terminal.ts';

/** Prints the page of a rule; without an id, the list of rules by family. */
export async function explainCommand(id: string | undefined): Promise<ExitCode> {
  if (id === undefined) {
    const families = Map.groupBy(rules, (rule) => rule.family);
    for (const [family, members] of families) {
      say(`${family}`);
      for (const rule of members) say(`  ${rule.id.padEnd(26)} ${rule.level}`);
    }
    return 0;
  }
  const rule = ruleCalled(id);
  say(await readFile(packageFile('src', 'rules', rule.family, `${rule.id}.md`), 'utf8'));
  return 0;
}
