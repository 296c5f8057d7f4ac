interface Span {
  readonly start: number;
  readonly end: number;
}

/** Torques that are measured, set for an extension, bounds, history, or for loosening: not what a bolt is tightened to. */
export const otherTorques =
  /\b(?:turning|running|rolling|starting|breakaway|break-away|break(?:s|ing)? loose|run-on|drag|preload|crowfoot|extensions?|adapters?|settings?|loosen\w*|slacken\w*|undo|shear\w*|break|breaks|strip|strips|never|not|more than|less than|over|beyond|exceed\w*|above|below|under|up to|at (?:most|least)|was|were|formerly|previous\w*|earlier|old|no longer|instead of|until|unless|if|when|where|range|capacity|about|around|roughly)\b/i;

/**
 * For each torque the name that it is surely said of: "59 N·m for the hook bolt", "the hook bolt gets 59 N·m". Offsets
 * in one sentence; undefined where two readings are possible.
 */
export function figureOwners<Name extends Span>(
  words: string,
  figures: readonly Span[],
  names: readonly Name[],
): (Name | undefined)[] {
  const after = figures.map(({ end }) => nameAfter(words, end, names));
  const taken = new Set(after);
  const owners: (Name | undefined)[] = [];
  for (const [i, { start, end }] of figures.entries()) {
    const before = figures[i - 1];
    const gap = before === undefined ? undefined : words.slice(before.end, start);
    if (gap !== undefined && /^\s*[(/=[]\s*$/.test(gap)) owners.push(owners[i - 1]);
    else if (after[i] !== undefined) owners.push(after[i]);
    else if (otherOwner.test(words.slice(end))) owners.push(undefined);
    else if (gap !== undefined && nextStage.test(gap)) owners.push(owners[i - 1]);
    else owners.push(nameBefore(words, start, before?.end ?? 0, names, taken));
  }
  return owners;
}

/** Of words like "hook bolt", whether they are the thing spoken of: not "under the hook bolt", not "hook bolt washer". */
export function mainName(words: string, { start, end }: Span): boolean {
  return !beside.test(words.slice(0, start)) && isWholeNoun(words, end);
}

const determiners =
  '(?:(?:the|a|an|all|each|every|both|its|their|these|those|of|one|two|three|four|five|six|seven|eight|nine|ten|twelve|new|other|remaining|\\d+)\\s+)*';
const beside = new RegExp(
  `\\b(?:with|under|over|behind|beside|next to|near|on|onto|in|into|from|above|below|at|after|before|through|between|against|by|like|as|than|off|around|to)\\s+${determiners}$`,
  'i',
);
const isWholeNoun = (words: string, end: number): boolean =>
  /^\s*(?:$|[.,;:!?()|/=–—]|(?:to|gets?|is|are|takes?|needs?|must|with|at|in|and|by|now|then|again|first|finally|evenly|crosswise|has|have|requires?|receives?)\b)/i.test(
    words.slice(end),
  );

/** "59 N·m (44 lbf·ft) for the hook bolt", "59 N·m and tighten the hook bolt". */
const leading = new RegExp(
  `^\\s*(?:\\([^()]*\\)\\s*)?(?:for|to|on|at|,?\\s*(?:and|then|and then)\\s+(?:re-?)?(?:tighten|torque))\\s+${determiners}$`,
  'i',
);
const otherOwner = /^\s*(?:\([^()]*\)\s*)?(?:for|on)\b/i;
const nextStage =
  /^[\s,;]*(?:(?:and|then|to|finally|first|next|in a second stage|afterwards)[\s,]+)*$/i;

function nameAfter<Name extends Span>(
  words: string,
  from: number,
  names: readonly Name[],
): Name | undefined {
  const name = names.find(({ start }) => start >= from);
  if (name === undefined || !leading.test(words.slice(from, name.start))) return undefined;
  return isWholeNoun(words, name.end) ? name : undefined;
}

/** Between a name and its torque stands nothing that could be what the torque is for. */
const otherThing =
  /;|\b(?:bolts?|nuts?|screws?|studs?|plugs?|clamps?|caps?|unions?|fittings?|pins?|that|which|so|while|because|for|after|before)\b|(?:\band|\bthen|,)\s+(?:then\s+)?(?:(?:re-?)?tighten|torque|the|its|all|each|both|an?)\b/i;

function nameBefore<Name extends Span>(
  words: string,
  to: number,
  from: number,
  names: readonly Name[],
  taken: ReadonlySet<Name | undefined>,
): Name | undefined {
  const name = names.findLast(({ end }) => end <= to);
  if (name === undefined || name.start < from || taken.has(name)) return undefined;
  return mainName(words, name) && !otherThing.test(words.slice(name.end, to)) ? name : undefined;
}
