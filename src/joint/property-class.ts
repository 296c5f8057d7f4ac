import type { ReadStrength, Strength } from './strength.ts';

/**
 * Reads a property class: `8.8` of bolts (ISO 898-1), `8` of nuts (ISO 898-2), `A2-70` of stainless ones (ISO 3506-1).
 * A class whose strength is not in the tables (set screws, thin nuts) has no value and no problem; neither has
 * what is no class of these standards at all.
 */
export function parsePropertyClass(text: string): ReadStrength {
  const plain = text
    .trim()
    .replace(/^(?:property )?(?:class|cl\.?) ?/i, '')
    .replace(',', '.');
  const stainless = /^([ACDF]\d) ?- ?(\d{2,3})\b/i.exec(plain);
  if (stainless) return readStainless(stainless[1] ?? '', stainless[2] ?? '');
  const bolt = /^\d{1,3}\.\d+/.exec(plain)?.[0];
  // Classes 08.8 and 010.9 are those of bolts with reduced loadability.
  if (bolt?.startsWith('0')) return {};
  if (bolt !== undefined) return byName(bolts, bolt, unratedBolts);
  const nut = /^\d+$/.exec(plain)?.[0];
  return nut === undefined ? {} : byName(nuts, nut, unratedNuts);
}

/** Stress under proof load in MPa, ISO 898-1. */
type StressRow = readonly [string, ...(readonly [upTo: number, stress: number])[]];
const class88: StressRow = ['8.8', [16, 580], [Infinity, 600]];
const class129: StressRow = ['12.9', [Infinity, 970]];
const boltStress: readonly StressRow[] = [
  ['4.6', [Infinity, 225]],
  ['4.8', [Infinity, 310]],
  ['5.6', [Infinity, 280]],
  ['5.8', [Infinity, 380]],
  ['6.8', [Infinity, 440]],
  class88,
  ['9.8', [Infinity, 650]],
  ['10.9', [Infinity, 830]],
  class129,
];

/** Classes of withdrawn standards and beyond the tables. */
const unratedBolts: readonly string[] = ['3.6', '6.6', '6.9', '14.9'];

/** A nut of ISO 898-2 stands the proof load of the bolts whose class begins with its number. */
const nutsFor: readonly (readonly [nut: string, bolt: string])[] = [
  ['6', '6.8'],
  ['8', '8.8'],
  ['9', '9.8'],
  ['10', '10.9'],
  ['12', '12.9'],
];

/** Thin nuts 04 and 05 are 4 and 5 once YAML has read them as numbers. */
const unratedNuts: readonly string[] = ['4', '5', '04', '05'];

/** Stress at 0.2 % elongation in MPa, ISO 3506-1. */
const stainlessStress: ReadonlyMap<string, number> = new Map([
  ['50', 210],
  ['70', 450],
  ['80', 600],
  ['100', 800],
]);

/** Strength numbers of martensitic, ferritic and duplex steels, which are not in the table. */
const unratedStainless: readonly string[] = ['45', '60', '110'];

const bolts: ReadonlyMap<string, Strength> = new Map(
  boltStress.map((row) => [row[0], strengthOf(row)]),
);

const nuts: ReadonlyMap<string, Strength> = new Map(
  nutsFor.flatMap(([nut, bolt]) => {
    const strength = bolts.get(bolt);
    return strength === undefined ? [] : [[nut, { ...strength, name: `class ${nut}` }] as const];
  }),
);

/** No common bolt is stronger: class 12.9. */
export const strongest = strengthOf(class129);

/** The bolt that is meant where no class is said: 8.8 (common practice). */
export const middling = strengthOf(class88);

function strengthOf([name, ...ranges]: StressRow): Strength {
  return {
    name: `class ${name}`,
    isStainless: false,
    proof: ranges.map(([upTo, stress]) => ({ upTo, stress })),
  };
}

/** The classes that are known, for a message. */
const propertyClasses: readonly string[] = [...bolts.keys(), ...nuts.keys(), 'A2-70', 'A4-80'];

function byName(
  known: ReadonlyMap<string, Strength>,
  name: string,
  unrated: readonly string[],
): ReadStrength {
  const value = known.get(name);
  if (value !== undefined) return { value };
  if (unrated.includes(name)) return {};
  return { problem: { member: 'class', known: propertyClasses } };
}

function readStainless(steel: string, strength: string): ReadStrength {
  const stress = /^A/i.test(steel) ? stainlessStress.get(strength) : undefined;
  if (stress !== undefined) {
    const name = `class ${steel.toUpperCase()}-${strength}`;
    return { value: { name, isStainless: true, proof: [{ upTo: Infinity, stress }] } };
  }
  if (stainlessStress.has(strength) || unratedStainless.includes(strength)) return {};
  return { problem: { member: 'class', known: propertyClasses } };
}
