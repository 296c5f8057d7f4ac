import type { Command } from 'commander';
import type { ExitCode } from './exit-code.ts';

/** What the help of a verb says beyond its arguments and options; the reference page is made from it too. */
export interface VerbHelp {
  readonly examples: readonly Example[];
  /** What each exit code of this verb means. */
  readonly exits: Readonly<Partial<Record<ExitCode, string>>>;
  /** What a user should know and no option says: which stream gets what, which file is written. */
  readonly notes?: readonly string[];
}

/** A line that can be typed as it stands in a folder that holds the demo manual as `manual`. */
export interface Example {
  readonly line: string;
  readonly does: string;
  /** False where it waits for ever or needs more than the demo manual, and a test of its own runs it. */
  readonly runs?: false;
}

/** Who uses a verb: headings of the list of verbs. */
export const verbGroups = {
  writing: 'For writers:',
  review: 'For reviewers and CI:',
  workshop: 'For the workshop, pages and paper:',
  programs: 'For other programs and the shell:',
} as const;

const helps = new WeakMap<Command, VerbHelp>();

/** Adds examples, exit codes and notes to the help of a verb, and its heading to the list of verbs. */
export function tellHelp(verb: Command, group: keyof typeof verbGroups, help: VerbHelp): void {
  helps.set(verb, help);
  verb.helpGroup(verbGroups[group]).addHelpText('after', () => asText(help, verb));
}

export const helpOf = (verb: Command): VerbHelp | undefined => helps.get(verb);

/** The exit codes of a verb in their order. */
export function exitsOf({ exits }: VerbHelp): readonly (readonly [ExitCode, string])[] {
  const codes: readonly ExitCode[] = [0, 1, 2];
  return codes.flatMap((code) => {
    const means = exits[code];
    return means === undefined ? [] : [[code, means] as const];
  });
}

function asText(help: VerbHelp, verb: Command): string {
  const helper = verb.createHelp();
  const hung = (text: string, indent: number): string =>
    helper.boxWrap(text, 80 - indent).replaceAll('\n', `\n${' '.repeat(indent)}`);
  const notes = (help.notes ?? []).map((note) => `${hung(note, 0)}\n\n`).join('');
  const examples = help.examples.map(({ line, does }) => `  ${line}\n      ${hung(does, 6)}\n`);
  const exits = exitsOf(help).map(([code, means]) => `  ${code}  ${hung(means, 5)}`);
  return `\n${notes}Examples:\n${examples.join('')}\nExit codes:\n${exits.join('\n')}`;
}
