import type { Command } from 'commander';
import { referenceOf } from './reference.ts';
import { referenceMarkdown } from './reference-markdown.ts';
import { referenceRoff } from './reference-roff.ts';

/** The pages of reference that the project keeps, by their paths from its root. */
export function referenceFiles(program: Command): Readonly<Record<string, string>> {
  const reference = referenceOf(program);
  return {
    'site/guide/16-the-command.md': referenceMarkdown(reference),
    'site/man/tallybolt.1': referenceRoff(reference),
  };
}
