import type { Argument, HelpConfiguration, Option } from 'commander';

/** How the help of every verb tells its arguments and options. */
export const helpWords: HelpConfiguration = {
  argumentDescription,
  optionDescription,
  commandDescription: (verb) => sentence(verb.description()),
};

/** What an option is for, the values that it knows, and the one that holds when it is absent. */
export function optionDescription({ description, argChoices, defaultValue }: Option): string {
  return `${description}${choicesAndDefault(argChoices, defaultValue)}`;
}

/** The same of an argument. */
export function argumentDescription({ description, argChoices, defaultValue }: Argument): string {
  return `${description}${choicesAndDefault(argChoices, defaultValue)}`;
}

/** With a capital letter and a full stop. */
export function sentence(text: string): string {
  return `${text.slice(0, 1).toUpperCase()}${text.slice(1)}${text.endsWith('.') ? '' : '.'}`;
}

function choicesAndDefault(choices: readonly string[] | undefined, preset: unknown): string {
  const named = choices === undefined || choices.length < 2 ? '' : `: ${choices.join(', ')}`;
  if (preset === undefined || preset === false) return named;
  return `${named} (when absent: ${preset === '.' ? 'this folder' : String(preset)})`;
}
