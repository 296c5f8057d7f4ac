import type { Argument, Command, Option } from 'commander';
import {
  beginning,
  type Next,
  type NextWord,
  nextValues,
  takesSeveral,
  type Vocabulary,
  verbsOf,
} from './next-values.ts';

/**
 * What may stand next on a command line, from the program's own description of itself. `words` are those after the
 * program's name up to the one that is being typed, which is the last and may be empty or half a word.
 */
export async function nextWords(
  program: Command,
  words: readonly string[],
  vocabulary: Vocabulary,
): Promise<Next> {
  const typed = words.at(-1) ?? '';
  const [name = '', ...rest] = words.slice(0, -1);
  if (words.length < 2)
    return beginning(typed.startsWith('-') ? optionsOf(program) : verbsOf(program), typed);
  const verb = program.commands.find((one) => one.name() === name);
  if (verb === undefined) return [];
  const line = readLine(verb, rest);
  const offer = (what: Option | Argument): Promise<Next> =>
    nextValues(what, typed, { program, vocabulary, folder: line.folder });
  if (line.waiting !== undefined) return offer(line.waiting);
  const [, flag = '', begun] = /^(--[^=]+)=(.*)$/s.exec(typed) ?? [];
  const option = verb.options.find(({ long }) => long === flag);
  if (option !== undefined && begun !== undefined) {
    const next = await nextValues(option, begun, { program, vocabulary, folder: line.folder });
    return typeof next === 'string'
      ? next
      : next.map(({ word, says }) => ({ word: `${flag}=${word}`, says }));
  }
  if (typed.startsWith('-'))
    return beginning(
      optionsOf(verb).filter(({ word }) => !line.used.has(word)),
      typed,
    );
  const { registeredArguments: places } = verb;
  const last = places.at(-1);
  const place = places[line.places] ?? (last?.variadic ? last : undefined);
  return place === undefined ? [] : offer(place);
}

interface Line {
  /** An option that still needs its value. */
  readonly waiting: Option | undefined;
  readonly used: ReadonlySet<string>;
  /** How many arguments stand already. */
  readonly places: number;
  /** Folder of the manual, as far as it has been named. */
  readonly folder: string;
}

function readLine(verb: Command, words: readonly string[]): Line {
  let waiting: Option | undefined;
  let folder = '.';
  let places = 0;
  const used = new Set<string>();
  for (const word of words) {
    // Some shells part `--only=a` into three words.
    if (word === '=') continue;
    if (waiting !== undefined) {
      if (waiting.long === '--in') folder = word;
      waiting = undefined;
    } else if (word.startsWith('-')) {
      const [flag, value] = word.split('=', 2);
      const option = verb.options.find(({ long, short }) => long === flag || short === flag);
      if (option?.long !== undefined && option.long !== null && !takesSeveral(option))
        used.add(option.long);
      if (option?.required === true && value === undefined) waiting = option;
      if (option?.long === '--in' && value !== undefined) folder = value;
    } else {
      if (verb.registeredArguments[places]?.name() === 'folder') folder = word;
      places += 1;
    }
  }
  return { waiting, used, places, folder };
}

function optionsOf(verb: Command): readonly NextWord[] {
  return verb
    .createHelp()
    .visibleOptions(verb)
    .flatMap(({ long, description }) =>
      typeof long === 'string' ? [{ word: long, says: description }] : [],
    );
}
