import { readKnownUnit, type UnitReading } from './read-unit.ts';
import type { UnitName } from './unit-lookup.ts';

/** Reads a unit in running prose, only where nothing but a unit can be meant. */
export function readUnitInProse(text: string, at: number): UnitReading | undefined {
  const reading = readKnownUnit(text, at, (written, end, name) =>
    isPlainlyAUnit(text, at, written, end, name),
  );
  if (reading?.spelling !== 'word') return reading;
  // "10 minutes" is good English, though not how a value is written.
  const { start, end, unit, spelling } = reading;
  return { start, end, unit, spelling };
}

/**
 * Names that are words or marks of their own in prose: C and F sections, mounting feet, a 12 pt socket, rev 3, the
 * closing quotation mark, days as `d`.
 */
const notInProse: ReadonlySet<string> = new Set([
  'C',
  'F',
  'd',
  'pt',
  'pts',
  'mil',
  'mils',
  'rev',
  'revs',
  'foot',
  'feet',
  'kilo',
  'kilos',
  'bars',
  'ins',
  'gm',
  'mb',
  "'",
  '′',
  '’',
  '”',
]);

function isPlainlyAUnit(
  text: string,
  at: number,
  written: string,
  end: number,
  name: UnitName,
): boolean {
  if (notInProse.has(written) || !endsInProse(text, end)) return false;
  if (/(?:^|\s)in$/i.test(written)) return isInchNotPreposition(text, at, end);
  if (written === '"' || written === '″') return isInchMark(text, at);
  if (name.is === 'unit' && name.unit === 'turn') return isTurnNotVerb(text, at);
  return true;
}

function endsInProse(text: string, end: number): boolean {
  return /^(?:$|[\s.,;:!?)\]}"'”’…–—±+]|\/\s|[-/]\d)/u.test(text.slice(end, end + 2));
}

/** `in` is a unit at the end of a phrase, as "3 in the box" never is; and not in "push the other 3 in." */
function isInchNotPreposition(text: string, at: number, end: number): boolean {
  if (!/^(?:$|[.,;:!?)\]]|\s*[([]|\s*$)/u.test(text.slice(end, end + 8))) return false;
  return !/\b(?:other|all|remaining|last|first|next|these|those|both|the)\s+\S+\s*$/iu.test(
    text.slice(Math.max(0, at - 40), at),
  );
}

/** An inch mark follows a fraction and no quotation is open. */
function isInchMark(text: string, at: number): boolean {
  if (!/\d\/\d+\s?$/.test(text.slice(Math.max(0, at - 8), at))) return false;
  return (text.slice(0, at).split('"').length - 1) % 2 === 0;
}

/** "1/4 turn", "by 2 turns"; not "steps 1 and 2 turn the shaft", not "shaft 2 turns freely". */
function isTurnNotVerb(text: string, at: number): boolean {
  const before = text.slice(Math.max(0, at - 40), at);
  if (/(?:\d\/\d+|[¼-¾⅐-⅞])\s*$/u.test(before)) return true;
  return /\b(?:by|off|back|least|most|exactly|another|further|through|of)\s+[\d.]+\s*$/iu.test(
    before,
  );
}
