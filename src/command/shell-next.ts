import type { Command } from 'commander';
import type { ExitCode } from './exit-code.ts';
import type { Next } from './next-values.ts';
import { nextWords } from './next-words.ts';
import { procedureIds } from './procedure-ids.ts';
import { say } from './terminal.ts';

/** Prints what may stand next on a command line, for the script of a shell. Always 0. */
export async function shellNextCommand(
  program: Command,
  words: readonly string[],
): Promise<ExitCode> {
  const next = await nextWords(program, words, {
    rules: async () => {
      const { rules } = await import('../rules/index.ts');
      return rules.map(({ id, family }) => ({ word: id, says: family }));
    },
    procedures: async (folder) =>
      (await procedureIds(folder)).map(({ id, title }) => ({ word: id, says: title })),
  });
  const lines = linesOf(next);
  if (lines.length > 0) say(lines.join('\n'));
  return 0;
}

function linesOf(next: Next): readonly string[] {
  if (typeof next === 'string') return [`:${next}`];
  return next.map(({ word, says }) => `${word}\t${says.replace(/\s+/g, ' ')}`);
}
