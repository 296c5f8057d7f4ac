import type { Verb } from '../../../schemas/directives.ts';
import type { Item } from '../../catalogue/index.ts';
import { verbsFor } from '../../ledger/index.ts';
import type { Action } from '../../syntax/index.ts';
import { uncounted, type WorkVerb } from '../wording/work-verbs.ts';
import type { Command, CommandReader } from './commands.ts';
import type { ItemFinder, NamedItem } from './item-names.ts';
import { blank, blanked, quotationsIn, type RunningText } from './running-text.ts';
import { sentencesIn } from './sentences.ts';

/** Words that command work without a directive. Offsets count in the running text. */
export interface Untracked {
  readonly start: number;
  readonly end: number;
  readonly words: string;
  /** The entry that the words name, and the directive that would say them. */
  readonly item: Item | undefined;
  readonly verb: Verb;
  /** The English verb, and what follows it to the end of the clause. */
  readonly said: WorkVerb;
  readonly object: string;
  /** True where the object is only "it" or "them". */
  readonly isOnIt: boolean;
}

/** Words that are said as work, and the actions with them. */
export interface Worked {
  readonly text: RunningText;
  readonly actions: readonly Action[];
}

/** How commands and the entries in them are found. */
export interface WorkReader {
  readonly commands: CommandReader;
  readonly find: ItemFinder;
}

export function untrackedIn(step: Worked, { commands, find }: WorkReader): Untracked[] {
  const text = masked(step.text);
  const found: Untracked[] = [];
  for (const { start, end } of sentencesIn(text)) {
    for (const readings of commands(text.slice(start, end))) {
      const [first] = readings.flatMap((command) => untracked(command, step, find, start));
      // "Take the cover off and lay it aside" is told once.
      if (first !== undefined && !(found.length > 0 && first.isOnIt)) found.push(first);
    }
  }
  return found;
}

function untracked(command: Command, step: Worked, find: ItemFinder, offset: number): Untracked[] {
  const named = objectIn(command, find);
  if (!isWork(command, named) || isCounted(command, named?.item, step)) return [];
  const verb = directiveFor(command.verb, named?.item);
  if (verb === undefined) return [];
  const start = offset + command.start;
  const end = offset + command.end + (named?.end ?? shortObject(command.object));
  const words = step.text.text.slice(start, end);
  const { verb: said, object } = command;
  const isOnIt = pronoun.test(object);
  return [{ start, end, words, item: named?.item, verb, said, object, isOnIt }];
}

/** The words with everything that is not plain prose blanked out, at the same offsets. */
function masked({ text, stretches }: RunningText): string {
  return blanked(text, [...stretches, ...quotationsIn(text)]);
}

const determiner =
  '(?:the|a|an|all|each|every|both|any|this|that|these|those|its|their|one|two|three|four|five|six|seven|eight|nine|ten|twelve|other|remaining|new|old|\\d+)';
const preposition =
  /\b(?:from|to|on|onto|in|into|at|with|under|over|behind|by|for|between|through|against|near|off|out)\b/i;
const spacedPreposition = new RegExp(`\\s${preposition.source}`, 'i');
const pronoun = /^\s+(?:it|them|these|those|this|everything|both|all)\s*$|^\s+(?:it|them)\b/i;

/** The entry that is the object of a command: named before any preposition, a few words on. */
function objectIn({ verb, object }: Command, find: ItemFinder): NamedItem | undefined {
  const found = find(object);
  if (found === undefined || verb.anywhere) return found;
  const before = object.slice(0, found.start).replace(/\b(?:one|each|all|both|\d+) of\b/i, '');
  return preposition.test(before) || before.trim().split(/\s+/).length > 5 ? undefined : found;
}

/** Whether the words are surely a command to do work on something that is counted. */
function isWork({ verb, object }: Command, named: NamedItem | undefined): boolean {
  if (isUncounted(object, named) || /^\s*(?:from|to|at|by|with|on|in|into)\b/i.test(object))
    return false;
  const item = named?.item;
  if (item?.kind === 'tool' || (item?.kind === 'consumable' && !verb.anywhere)) return false;
  if (named === undefined || item === undefined) {
    return verb.needs === 'any' || (verb.needs === 'object' && isObject(object));
  }
  const rest = object.slice(named.end);
  if (verb.tail !== undefined && !isSoon(rest, verb.tail)) return false;
  return verb.toPosition === undefined || namesPosition(item, rest);
}

/** A thing of the shop, unless the catalogue has an entry of that very name. */
function isUncounted(object: string, named: NamedItem | undefined): boolean {
  const words = object.trimStart();
  const found = uncounted.exec(words)?.[0];
  if (found === undefined || named === undefined) return found !== undefined;
  const end = object.length - words.length + found.length;
  return (
    named.end < end || !/^\s*(?:(?:the|a|an|all|both)\s+)*$/i.test(object.slice(0, named.start))
  );
}

const isSoon = (rest: string, words: string): boolean =>
  new RegExp(`^,?(?:\\s+[^\\s,]+){0,2}\\s+(?:${words})\\b`, 'i').test(rest);

function namesPosition(item: Item, rest: string): boolean {
  const positions =
    item.kind === 'control' ? item.positions : item.kind === 'energy' ? ['off', 'on'] : [];
  return positions.some((position) =>
    new RegExp(
      `\\b(?:to|into|at)\\s+(?:the\\s+)?["“]?${position.replaceAll('-', '[ -]')}\\b`,
      'i',
    ).test(rest),
  );
}

/** Whether the words need no directive: they have one, or the step counts the same elsewhere. */
function isCounted(
  { verb, object }: Command,
  item: Item | undefined,
  { actions }: Worked,
): boolean {
  if (leadsToAction(object)) return true;
  if (verb.verbs.includes('torque')) {
    if (/^\s*(?:if|as)\b/i.test(object)) return true;
    if (item === undefined && object.trim() === '') return true;
  }
  if (actions.length > 0 && pronoun.test(object)) return true;
  return actions.some((action) =>
    verb.needs === 'item'
      ? action.item.id === item?.id
      : verb.verbs.includes(action.verb) && (item === undefined || action.item.id === item.id),
  );
}

/** "Remove :remove[the bolts]{…}": the directive says it, with at most a few small words between. */
function leadsToAction(object: string): boolean {
  const at = object.indexOf(blank);
  if (at < 0) return false;
  return /^(?:\s|\b(?:the|a|an|all|both|each|its|every|or|\w+ly)\b)*$/i.test(object.slice(0, at));
}

function isObject(object: string): boolean {
  if (/^\s+[\d/.]+\s*(?:turns?|revolutions?|°|%)/i.test(object)) return false;
  return beginsObject.test(object);
}

const beginsObject = new RegExp(`^\\s+(?:${determiner}\\s+\\S|(?:it|them)\\b)`, 'i');

function directiveFor({ verbs, needs }: WorkVerb, item: Item | undefined): Verb | undefined {
  if (item === undefined) return verbs[0];
  const can = verbsFor(item.kind);
  return verbs.find((verb) => can.includes(verb)) ?? (needs === 'item' ? undefined : verbs[0]);
}

/** As much of the object as names it: up to a preposition, and four words at most. */
function shortObject(object: string): number {
  const upTo = object.search(spacedPreposition);
  const words = /^(?:\s+\S+){0,4}/.exec(upTo < 0 ? object : object.slice(0, upTo));
  return words?.[0].length ?? 0;
}
