import type { Verb } from '../../../schemas/directives.ts';

type Sense =
  | 'out'
  | 'in'
  | 'tight'
  | 'loose'
  | 'drain'
  | 'fill'
  | 'isolate'
  | 'restore'
  | 'cap'
  | 'uncap';

interface SenseWords {
  /** With these a label commands it, as the source of a regular expression. */
  readonly first: string;
  /** The same with a particle after the object: "take the cover off". */
  readonly apart?: readonly [verb: string, particle: string];
  /** Any of these later in the label says that it does so after all. */
  readonly later: RegExp;
}

const moving = 'take|lift|pull|slide|draw|drive|press|pry|prise|swing|peel|lever';
const putting = 'put|slide|push|press|screw|hook|lay|lower|drive';

/** English words of work, by what they do to a thing. */
const senses: Readonly<Record<Sense, SenseWords>> = {
  out: {
    first: `remove|detach|dismount|unbolt|unscrew|un-?plug|unhook|disconnect|withdraw|dismantle|disassemble|(?:${moving}) (?:out|off|away)`,
    apart: [moving, 'out|off|away'],
    later:
      /\b(?:remov\w+|detach\w*|disconnect\w*|withdraw\w*|unscrew\w*|unbolt\w*|un-?plug\w*|take|lift|pull|draw|drive|press|pry|prise|swing|throw|keep|lay|scrap|discard\w*|out|off|away|free|clear|loose|aside)\b/i,
  },
  in: {
    first: `install|re-?install|re-?fit|fit|mount|attach|re-?attach|connect|re-?connect|re-?assemble|put back|return|plug in|(?:${putting}) (?:in|on|back)`,
    apart: [putting, 'in|on|back'],
    later:
      /\b(?:install\w*|re-?fit\w*|fit\w*|mount\w*|attach\w*|(?:re-?)?connect\w*|return\w*|put|lay|push|press|slide|place|set|screw|insert|drive|hook|lower|bring|drop|snap\w*|engage\w*|swing|let|back|home)\b/i,
  },
  tight: {
    first: 'tighten|re-?tighten|torque|re-?torque|do up|bolt down|screw (?:down|up)',
    later: /\b(?:(?:re-?)?tighten\w*|(?:re-?)?torque\w*|snug|nip|pull|bring)\b/i,
  },
  loose: {
    first: 'loosen|slacken|undo|back off|let go',
    apart: ['back', 'off'],
    later: /\b(?:loosen\w*|slacken\w*|undo|unscrew\w*|releas\w+|let|back|free|loose|off)\b/i,
  },
  drain: {
    first: 'drain|empty',
    later: /\b(?:drain\w*|empty|empties|run|flow|out)\b/i,
  },
  fill: {
    first: 're-?fill|fill|top up|pour in',
    later: /\b(?:(?:re-?)?fill\w*|top|pour\w*|add)\b/i,
  },
  isolate: {
    first:
      'isolate|disconnect|un-?plug|lock out|switch off|turn off|(?:take|pull) (?:off|out|away)',
    apart: ['switch|turn|take|pull', 'off|out|away'],
    later: /\b(?:isolat\w+|disconnect\w*|un-?plug\w*|lock\w*|off|out|away|open)\b/i,
  },
  restore: {
    first: 'restore|connect|re-?connect|plug in|switch on|turn on|put back',
    apart: ['switch|turn|plug|put', 'on|in|back'],
    later: /\b(?:restor\w+|(?:re-?)?connect\w*|plug|on|back|close)\b/i,
  },
  cap: { first: 'cap', later: /\b(?:cap|plug|close|seal)\b/i },
  uncap: {
    first: 'uncap',
    later: /\b(?:uncap\w*|remov\w+|take|pull|off|out)\b/i,
  },
};

interface Contrary {
  /** What the action does. */
  readonly own: Sense;
  /** What it surely does not. */
  readonly not: readonly Sense[];
}

const taking: Contrary = { own: 'out', not: ['in', 'tight'] };
const giving: Contrary = { own: 'in', not: ['out', 'loose'] };
const tightening: Contrary = { own: 'tight', not: ['loose', 'out'] };

/** An action that is not listed may be said with any word. */
const contraries: Readonly<Partial<Record<Verb, Contrary>>> = {
  remove: taking,
  discard: taking,
  withdraw: taking,
  disconnect: taking,
  'set-aside': taking,
  install: giving,
  return: giving,
  connect: giving,
  fit: giving,
  loosen: { own: 'loose', not: ['tight', 'in'] },
  tighten: tightening,
  torque: tightening,
  drain: { own: 'drain', not: ['fill'] },
  fill: { own: 'fill', not: ['drain'] },
  isolate: { own: 'isolate', not: ['restore'] },
  restore: { own: 'restore', not: ['isolate'] },
  cap: { own: 'cap', not: ['uncap'] },
  uncap: { own: 'uncap', not: ['cap'] },
};

const manner = '(?:(?:then|now|next|first|again|also|finally|fully|just|only|[a-z]{3,}ly),?\\s+)*';

/**
 * The verb with which a label begins, where it says the contrary of the action and nothing later sets that right.
 * `object` says how much of what follows the verb names the item; undefined where it names something else.
 */
export function contraryVerb(
  label: string,
  action: Verb,
  object: (after: string) => number | undefined,
): string | undefined {
  const contrary = contraries[action];
  for (const sense of contrary?.not ?? []) {
    const words = firstVerb(label, sense);
    if (contrary === undefined || words === undefined) continue;
    const after = label.slice(label.indexOf(words) + words.length);
    const end = object(after);
    if (end !== undefined && !senses[contrary.own].later.test(after.slice(end))) return words;
  }
  return undefined;
}

function firstVerb(label: string, sense: Sense): string | undefined {
  const { whole, parted } = beginning[sense];
  return whole.exec(label)?.[1] ?? parted?.exec(label)?.[1];
}

interface Beginning {
  readonly whole: RegExp;
  readonly parted: RegExp | undefined;
}

function beginningOf(sense: Sense): Beginning {
  const { first, apart } = senses[sense];
  return {
    whole: new RegExp(`^${manner}(${first})\\b`, 'i'),
    parted:
      apart && new RegExp(`^${manner}(${apart[0]})\\s+(?:\\S+\\s+){1,5}(?:${apart[1]})\\b`, 'i'),
  };
}

const beginning: Readonly<Record<Sense, Beginning>> = {
  out: beginningOf('out'),
  in: beginningOf('in'),
  tight: beginningOf('tight'),
  loose: beginningOf('loose'),
  drain: beginningOf('drain'),
  fill: beginningOf('fill'),
  isolate: beginningOf('isolate'),
  restore: beginningOf('restore'),
  cap: beginningOf('cap'),
  uncap: beginningOf('uncap'),
};
