import {
  type FoundQuantity,
  findQuantities,
  kindOf,
  mainUnit,
  type PolicyEntry,
  piecesByPolicy,
  type Quantity,
  sameFamily,
  type UnitId,
  type UnitKind,
  type UnitPolicy,
} from '../quantity/index.ts';

/** Read the same everywhere, whatever the manual's units. */
const alikeEverywhere: readonly UnitKind[] = ['time', 'angle', 'share'];

/**
 * Running text as a sheet prints it: a value in one unit of the manual's pair gets the other one in
 * brackets, and no line breaks between a number and its unit. A value that a bracket or a slash already
 * gives in a second unit, and one that cannot be read beyond doubt, stays as written.
 */
export function valuesInText(text: string, policy: UnitPolicy): string {
  const found = findQuantities(text);
  let printed = '';
  let at = 0;
  found.forEach((one, i) => {
    const isDoubled = doubles(text, one, found[i + 1]) || doubles(text, found[i - 1], one);
    printed += text.slice(at, one.start) + valueText(text, one, isDoubled ? undefined : policy);
    at = one.end;
  });
  return printed + text.slice(at);
}

/** The same without second units, for sizes and specifications. */
export function boundValues(text: string): string {
  return findQuantities(text).reduceRight(
    (all, one) => all.slice(0, one.start) + valueText(text, one, undefined) + all.slice(one.end),
    text,
  );
}

function valueText(text: string, found: FoundQuantity, policy: UnitPolicy | undefined): string {
  const written = text.slice(found.start, found.end);
  const { quantity } = found;
  if (quantity === undefined || found.problems.length > 0) return written;
  const bound = written.replace(/\s+/g, '\u00a0').replace(/(\d)\.\.(\d)/, '$1–$2');
  const other = policy && otherUnit(quantity, policy);
  if (other === undefined) return bound;
  return isInBrackets(text, found.start) ? `${bound} [${other}]` : `${bound} (${other})`;
}

/** The value in the other unit of the manual's pair; undefined where there is no pair, or its unit is in none. */
function otherUnit(quantity: Quantity, policy: UnitPolicy): string | undefined {
  const kind = kindOf(quantity);
  const [first, second]: PolicyEntry = policy[kind];
  if (second === undefined || alikeEverywhere.includes(kind)) return undefined;
  const own = mainUnit(quantity);
  const pieces = piecesByPolicy(quantity, policy);
  if (first === 'as written' || sameFamily(own, first))
    return differs(withoutLimit(pieces.second), own, second);
  return sameFamily(own, second) ? withoutLimit(pieces.first) : undefined;
}

const differs = (text: string | undefined, own: UnitId, second: UnitId): string | undefined =>
  sameFamily(own, second) ? undefined : text;

/** "at least 3 mm" is said once: the bracket holds the bare value, rounded as a limit must be. */
const withoutLimit = (text: string | undefined): string | undefined =>
  text?.replace(/^(?:max|min)\u00a0/, '');

/** True where the second of two neighbours says the first once more: `20 g (0.7 oz)`, `20 N·m / 15 lbf·ft`. */
function doubles(
  text: string,
  first: FoundQuantity | undefined,
  second: FoundQuantity | undefined,
): boolean {
  if (first?.quantity === undefined || second?.quantity === undefined) return false;
  if (kindOf(first.quantity) !== kindOf(second.quantity)) return false;
  const between = text.slice(first.end, second.start);
  if (/^\s*[([]\D*$/.test(between) && /^[^([]*[)\]]/.test(text.slice(second.end))) return true;
  const [one, other] = [mainUnit(first.quantity), mainUnit(second.quantity)];
  return /^\s*[/=]\s*$/.test(between) && !sameFamily(one, other);
}

function isInBrackets(text: string, at: number): boolean {
  const before = text.slice(0, at);
  return before.lastIndexOf('(') > before.lastIndexOf(')');
}
