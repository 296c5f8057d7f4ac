import { readFile } from 'node:fs/promises';
import { type Rule, rules } from '../rules/index.ts';
import type { ExitCode } from './exit-code.ts';
import { packageFile } from './package-root.ts';
import { ruleCalled } from './rule-called.ts';
import { say } from './terminal.ts';

/** Prints the page of a rule; of a family or without an id, the list of its rules. */
export async function explainCommand(id: string | undefined): Promise<ExitCode> {
  const families = Map.groupBy(rules, (rule): string => rule.family);
  if (id === undefined) {
    for (const [family, members] of families) list(family, members);
    say('\nRun `tallybolt explain <rule>` for what a rule catches, why, and what to do.');
    return 0;
  }
  const family = families.get(id);
  if (family !== undefined) {
    list(id, family);
    return 0;
  }
  const rule = ruleCalled(id, [...families.keys()]);
  say(await readFile(packageFile('src', 'rules', rule.family, `${rule.id}.md`), 'utf8'));
  return 0;
}

function list(family: string, members: readonly Rule[]): void {
  say(family);
  for (const rule of members) say(`  ${rule.id.padEnd(26)} ${rule.level}`);
}
