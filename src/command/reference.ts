import type { Command } from 'commander';
import { argumentDescription, optionDescription, sentence } from './help-words.ts';
import { type Example, exitsOf, helpOf, verbGroups } from './verb-help.ts';

/** All that the help says, as data: pages of reference are written from it. */
export interface Reference {
  /** What the whole is for, a sentence. */
  readonly does: string;
  readonly options: readonly Term[];
  /** In the order of the help. */
  readonly groups: readonly { readonly heading: string; readonly verbs: readonly VerbEntry[] }[];
}

export interface VerbEntry {
  readonly name: string;
  /** How it is called: `tallybolt inspect [options] [folder]`. */
  readonly usage: string;
  readonly does: string;
  readonly notes: readonly string[];
  readonly arguments: readonly Term[];
  readonly options: readonly Term[];
  readonly examples: readonly Example[];
  readonly exits: readonly Term[];
}

/** A word of the command line, and what it is for. */
export interface Term {
  readonly word: string;
  readonly says: string;
}

/** Reads the reference out of the program's description of itself. */
export function referenceOf(program: Command): Reference {
  const verbs = program.createHelp().visibleCommands(program);
  return {
    does: sentence(program.description()),
    options: optionsOf(program),
    groups: Object.values(verbGroups).map((heading) => ({
      heading: heading.replace(/:$/, ''),
      verbs: verbs.filter((verb) => verb.helpGroup() === heading).map(entryOf),
    })),
  };
}

function entryOf(verb: Command): VerbEntry {
  const help = helpOf(verb);
  return {
    name: verb.name(),
    usage: verb.createHelp().commandUsage(verb),
    does: sentence(verb.description()),
    notes: help?.notes ?? [],
    arguments: verb.registeredArguments.map((one) => ({
      word: one.name(),
      says: argumentDescription(one),
    })),
    options: optionsOf(verb),
    examples: help?.examples ?? [],
    exits:
      help === undefined ? [] : exitsOf(help).map(([code, says]) => ({ word: String(code), says })),
  };
}

/** Without `--help`, which every verb has. */
function optionsOf(verb: Command): readonly Term[] {
  return verb
    .createHelp()
    .visibleOptions(verb)
    .filter(({ long }) => long !== '--help')
    .map((option) => ({ word: option.flags, says: optionDescription(option) }));
}
