import { nearestTo } from './near-spelling.ts';
import { remembered } from './remembered.ts';
import { isUnitId, type UnitId, unitIds, unitRow } from './unit.ts';
import { ambiguousSpellings, caseMatters, unitSpellings } from './unit-spellings.ts';

/** `standard` is printed as it is; `short` and `word` are understood but not the standard spelling. */
export type UnitName =
  | { readonly is: 'unit'; readonly unit: UnitId; readonly spelling: 'standard' | 'short' | 'word' }
  | { readonly is: 'ambiguous'; readonly choices: readonly [UnitId, UnitId, ...UnitId[]] };

/** The unit that a whole text names, whatever look-alike dots, primes or spaces it is written with. */
export const lookUpUnit = remembered((text: string): UnitName | undefined => {
  const name = plainMarks(text);
  const exact = names.get(name);
  if (exact) return exact;
  const folded = name.toLowerCase();
  return name.length > 1 && !caseMatters.has(folded) ? caseless.get(folded) : undefined;
});

/** Units whose names are a slip or two away from this text, nearest first, at most three. */
export function unitsLike(text: string): readonly UnitId[] {
  const folded = plainMarks(text).toLowerCase();
  if (folded.length < 2) return [];
  const found = nearestTo(folded, [...byFoldedName.keys()]).flatMap(
    (name) => byFoldedName.get(name) ?? [],
  );
  return [...new Set(found)].slice(0, 3);
}

/** No unit name is longer than this many characters. */
export const longestUnitName = 24;

/** One look for marks that differ only in code point: the dots, degree signs, micro signs and spaces. */
function plainMarks(text: string): string {
  return text
    .replace(/[⋅∙•‧・]/gu, '·')
    .replace(/[º˚]/gu, '°')
    .replace(/\u03bc/gu, '\u00b5')
    .replace(/[‐‑]/gu, '-')
    .replace(/×/gu, '*')
    .replace(/\s*([·*])\s*/gu, '$1')
    .replace(/\s+/gu, ' ');
}

const names: ReadonlyMap<string, UnitName> = new Map([
  ...ambiguousSpellings.flatMap(([spellings, choices]) =>
    spellings.map((name): [string, UnitName] => [name, { is: 'ambiguous', choices }]),
  ),
  ...unitIds.flatMap((unit) => [
    ...named(unit, unitSpellings[unit].words ?? [], 'word'),
    ...named(unit, unitSpellings[unit].short ?? [], 'short'),
  ]),
  ...unitIds.flatMap((unit) => named(unit, [unit, unitRow(unit).plural ?? unit], 'standard')),
]);

const caseless: ReadonlyMap<string, UnitName> = new Map(
  [...names].map(([name, meaning]) => [
    name.toLowerCase(),
    meaning.is === 'unit' ? { ...meaning, spelling: 'short' } : meaning,
  ]),
);

const byFoldedName: ReadonlyMap<string, readonly UnitId[]> = new Map(
  [...names].map(([name, meaning]) => [
    name.toLowerCase(),
    meaning.is === 'unit' ? [meaning.unit] : meaning.choices.filter(isUnitId),
  ]),
);

function named(
  unit: UnitId,
  spellings: readonly string[],
  spelling: 'standard' | 'short' | 'word',
): [string, UnitName][] {
  return spellings.map((name) => [name, { is: 'unit', unit, spelling }]);
}
