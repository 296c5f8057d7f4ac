import type { Argument, Command, Option } from 'commander';

/** A word that may stand next on the command line. */
export interface NextWord {
  readonly word: string;
  readonly says: string;
}

/** What may stand next; for paths the shell itself looks. */
export type Next = readonly NextWord[] | 'folders' | 'files';

/** What the command line's own description does not hold: the words that some values are taken from. */
export interface Vocabulary {
  readonly rules: () => Promise<readonly NextWord[]>;
  /** Procedures of the manual in a folder. */
  readonly procedures: (folder: string) => Promise<readonly NextWord[]>;
}

export interface About {
  readonly program: Command;
  readonly vocabulary: Vocabulary;
  readonly folder: string;
}

/** What an option or an argument may be: its choices, or what the name of its value says. */
export async function nextValues(
  what: Option | Argument,
  word: string,
  { program, vocabulary, folder }: About,
): Promise<Next> {
  const typed = word === '=' ? '' : word;
  if (what.argChoices !== undefined)
    return beginning(
      what.argChoices.map((choice) => ({ word: choice, says: '' })),
      typed,
    );
  switch (nameOf(what)) {
    case 'folder':
      return 'folders';
    case 'file':
    case 'files':
      return 'files';
    case 'verb':
      return beginning(verbsOf(program), typed);
    case 'rule':
      return beginning(await vocabulary.rules(), typed);
    case 'rules':
      return listed(await vocabulary.rules(), typed);
    case 'procedure':
      return beginning(await vocabulary.procedures(folder), typed);
    case 'procedures': {
      const known = await vocabulary.procedures(folder);
      return 'flags' in what ? listed(known, typed) : beginning(known, typed);
    }
    default:
      return [];
  }
}

/** The name of the value: `rules` of `--only <rules>`. */
function nameOf(what: Option | Argument): string {
  return 'flags' in what ? (/[<[]([\w-]+)/.exec(what.flags)?.[1] ?? '') : what.name();
}

/** Whether an option may be given several times, or with commas. */
export const takesSeveral = (option: Option): boolean =>
  /^(rules|procedures)$/.test(nameOf(option));

/** Those that begin as typed. */
export const beginning = (words: readonly NextWord[], typed: string): readonly NextWord[] =>
  words.filter(({ word }) => word.startsWith(typed));

/** With commas between them: what stands before the last comma is kept, and not offered again. */
function listed(words: readonly NextWord[], typed: string): readonly NextWord[] {
  const cut = typed.lastIndexOf(',') + 1;
  const before = typed.slice(0, cut);
  const had = before.split(',');
  return beginning(
    words.filter(({ word }) => !had.includes(word)),
    typed.slice(cut),
  ).map(({ word, says }) => ({ word: before + word, says }));
}

/** The verbs that the help lists. */
export function verbsOf(program: Command): readonly NextWord[] {
  return program
    .createHelp()
    .visibleCommands(program)
    .map((verb) => ({ word: verb.name(), says: verb.description() }));
}
