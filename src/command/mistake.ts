import type { Command, CommanderError } from 'commander';
import { nearest } from '../source/index.ts';

/** What was mistyped on the command line, and what to do about it. */
export interface Mistake {
  readonly message: string;
  readonly advice: string;
}

/** The words for a command line that cannot be read; `words` is that line. */
export function mistakeIn(
  { code, message }: CommanderError,
  words: readonly string[],
  program: Command,
): Mistake {
  const verb = program.commands.find((one) => one.name() === words[0]);
  const help = `\`tallybolt${verb === undefined ? '' : ` ${verb.name()}`} --help\``;
  const say = (text: string, near?: string): Mistake => ({
    message: text,
    advice: near === undefined ? `See ${help}.` : `Did you mean ${near}?`,
  });
  const about = verb?.name() ?? 'tallybolt';
  const told = message.replace(/^error: /, '').replace(/\n\(Did you mean [^\n]*\)$/, '');
  const [, first = ''] = /'([^']*)'/.exec(told) ?? [];
  switch (code) {
    case 'commander.unknownCommand':
      return say(`There is no verb ${first}.`, nearest(first, verbNames(program)));
    case 'commander.unknownOption': {
      const [flag = first] = first.split('=');
      return say(`${about} has no option ${flag}.`, nearest(flag, optionsOf(verb ?? program)));
    }
    case 'commander.optionMissingArgument':
      return say(`The option ${first} needs a value.`);
    case 'commander.missingArgument':
      return say(`${about} needs to know: which ${first}?`);
    case 'commander.excessArguments':
      return say(`${about} takes fewer words: ${told.replace(/^.*: /, '').replace(/\.$/, '')}.`);
    case 'commander.conflictingOption': {
      const [, one = '', other = ''] = /'(--[\w-]+)[^']*'.*'(--[\w-]+)[^']*'/.exec(told) ?? [];
      return say(`${one} and ${other} cannot be given together.`);
    }
    case 'commander.invalidArgument': {
      const { flags, name = '', given = '', why = '' } = invalid.exec(told)?.groups ?? {};
      const what = flags ?? name;
      const [, listed] = /^Allowed choices are (.*)\.$/.exec(why) ?? [];
      if (listed === undefined) return say(`${what} “${given}”: ${why || told}`);
      const choices = listed.split(', ');
      return say(
        `${what} cannot be “${given}”, only ${inWords(choices)}.`,
        nearest(given, choices),
      );
    }
    default:
      return say(sentenced(told));
  }
}

/** How commander says that the value of an option, or an argument, cannot be taken. */
const invalid =
  /(?:'(?<flags>[^']*)' argument|value) '(?<given>.*?)' is invalid(?: for argument '(?<name>[^']*)')?\. (?<why>.*)$/s;

/** Names of the verbs that the help lists. */
export function verbNames(program: Command): readonly string[] {
  return program
    .createHelp()
    .visibleCommands(program)
    .map((verb) => verb.name());
}

function optionsOf(verb: Command): readonly string[] {
  return verb
    .createHelp()
    .visibleOptions(verb)
    .flatMap(({ long }) => (typeof long === 'string' ? [long] : []));
}

const inWords = (choices: readonly string[]): string =>
  choices.length < 2
    ? choices.join('')
    : `${choices.slice(0, -1).join(', ')} or ${choices.at(-1) ?? ''}`;

const sentenced = (text: string): string => `${text.slice(0, 1).toUpperCase()}${text.slice(1)}`;
