import type { Verb } from '../../schemas/directives.ts';
import type { Item } from '../catalogue/index.ts';
import type { Sighting } from './sighting.ts';

/** What the words say beside verb and item; undefined where the directive needs something that they leave open. */
export function attributesFor(sighting: Sighting, verb: Verb, item: Item): string | undefined {
  const all = [
    ...instance(sighting, item),
    ...count(sighting, item),
    ...(verb === 'install' && isNew(sighting) ? ['new'] : []),
  ];
  if (verb !== 'set') return all.map((one) => ` ${one}`).join('');
  const position = positionSaid(sighting, item);
  return position === undefined ? undefined : ` to=${position}`;
}

/** A number below that of the catalogue: only so many are meant. Otherwise all that are left. */
function count({ phrase }: Sighting, item: Item): string[] {
  const said = phrase?.count;
  if (said === undefined || !('count' in item) || said >= item.count) return [];
  return [`qty=${said}`];
}

function instance({ object, phrase }: Sighting, item: Item): string[] {
  if (item.kind === 'hazard' || item.each === undefined || phrase === undefined) return [];
  const before = object.slice(0, phrase.end).toLowerCase();
  const said = item.each.filter((one) =>
    new RegExp(`\\b${one.replaceAll('-', '[ -]')}\\b`).test(before),
  );
  const [only] = said;
  return only === undefined || said.length > 1 ? [] : [`each=${only}`];
}

/** "Put a new gasket on": a new one goes in. */
export const isNew = ({ object, phrase }: Pick<Sighting, 'object' | 'phrase'>): boolean =>
  phrase !== undefined &&
  /^\s*(?:(?:an?|the|all|both|\d+|\p{L}+)\s+)?new\s/iu.test(object.slice(0, phrase.end));

/** The one position of a control that the words name, or that their verb means. */
function positionSaid({ object, work }: Sighting, item: Item): string | undefined {
  if (item.kind !== 'control') return undefined;
  const named = item.positions.filter((position) =>
    new RegExp(
      `\\b(?:to|into|at|in)\\s+(?:the\\s+)?["“]?${position.replaceAll('-', '[ -]')}\\b`,
      'i',
    ).test(object),
  );
  const [verb = ''] = work.found.words.toLowerCase().split(' ');
  const sense = Object.hasOwn(senses, verb) ? senses[verb] : undefined;
  const particle = /\b(on|off|open|shut|closed|in|out|up|down)\s*$/i
    .exec(object)?.[1]
    ?.toLowerCase();
  const said =
    named.length > 0
      ? named
      : item.positions.filter(
          (one) => sense?.test(one) || (particle !== undefined && one === particle),
        );
  const [only] = said;
  return said.length > 1 ? undefined : only;
}

/** Positions into which a verb by itself brings a control. */
const senses: Readonly<Record<string, RegExp>> = {
  start: /^(?:running|run|on|started)$/,
  stop: /^(?:stopped|stop|off)$/,
  open: /^open(?:ed)?$/,
  close: /^(?:closed?|shut)$/,
  shut: /^(?:closed?|shut)$/,
  engage: /^engaged?$/,
  disengage: /^(?:disengaged?|free)$/,
  release: /^(?:released?|free|off)$/,
  apply: /^(?:applied|set|on)$/,
  set: /^(?:set|applied)$/,
  lock: /^locked$/,
  unlock: /^unlocked$/,
  raise: /^(?:raised|up)$/,
  lower: /^(?:lowered|down)$/,
};
