import type { UnitId } from './unit.ts';

/** Ways to write a unit other than its standard spelling. */
export type Spellings = {
  /** Abbreviations and symbols: understood, and the standard spelling is told. */
  readonly short?: readonly string[];
  /** Whole words: the same in a value, but plain English in running prose. */
  readonly words?: readonly string[];
};

/** Letter case is forgiven where no other unit is meant by it, so only one case is listed. */
export const unitSpellings: Readonly<Record<UnitId, Spellings>> = {
  N·m: {
    short: joined(['N'], ['m']),
    words: joined(['newton'], ['metre', 'metres', 'meter', 'meters'], [' ', '-', '']),
  },
  cN·m: { short: joined(['cN'], ['m']) },
  kN·m: { short: joined(['kN'], ['m']) },
  lbf·ft: {
    short: [...joined(['lbf', 'lb', 'lbs'], ['ft']), ...joined(['ft'], ['lbf', 'lb', 'lbs'])],
    words: [
      ...joined(['foot'], ['pound', 'pounds'], [' ', '-']),
      ...joined(['pound', 'pounds'], ['feet', 'foot'], [' ', '-']),
    ],
  },
  lbf·in: {
    short: [...joined(['lbf', 'lb', 'lbs'], ['in']), ...joined(['in'], ['lbf', 'lb', 'lbs'])],
    words: [
      ...joined(['inch'], ['pound', 'pounds'], [' ', '-']),
      ...joined(['pound', 'pounds'], ['inch', 'inches'], [' ', '-']),
    ],
  },
  kgf·m: {
    short: [...joined(['kgf', 'kg', 'kp'], ['m']), ...joined(['m'], ['kgf', 'kg'], ['·', '-'])],
  },
  kgf·cm: { short: joined(['kgf', 'kg', 'kp'], ['cm']) },

  L: {
    short: ['l', 'ltr', 'ltrs', 'ℓ', 'dm³', 'dm3'],
    words: ['litre', 'litres', 'liter', 'liters'],
  },
  mL: {
    short: ['ml', 'cm³', 'cm3', 'ccm', 'cc'],
    words: ['millilitre', 'millilitres', 'milliliter', 'milliliters'],
  },
  'US gal': { short: qualified(us, ['gal', 'gals']), words: qualified(us, ['gallon', 'gallons']) },
  'US qt': { short: qualified(us, ['qt', 'qts']), words: qualified(us, ['quart', 'quarts']) },
  'US pt': { short: qualified(us, ['pt', 'pts']), words: qualified(us, ['pint', 'pints']) },
  'US fl oz': {
    short: qualified(us, ['fl oz', 'floz', 'fl. oz']),
    words: qualified(us, ['fluid ounce', 'fluid ounces']),
  },
  'imp gal': {
    short: qualified(imp, ['gal', 'gals']),
    words: qualified(imp, ['gallon', 'gallons']),
  },
  'imp qt': { short: qualified(imp, ['qt', 'qts']), words: qualified(imp, ['quart', 'quarts']) },
  'imp pt': { short: qualified(imp, ['pt', 'pts']), words: qualified(imp, ['pint', 'pints']) },
  'imp fl oz': {
    short: qualified(imp, ['fl oz', 'floz', 'fl. oz']),
    words: qualified(imp, ['fluid ounce', 'fluid ounces']),
  },

  mm: { words: ['millimetre', 'millimetres', 'millimeter', 'millimeters'] },
  cm: { words: ['centimetre', 'centimetres', 'centimeter', 'centimeters'] },
  m: { words: ['metre', 'metres', 'meter', 'meters'] },
  km: { words: ['kilometre', 'kilometres', 'kilometer', 'kilometers'] },
  µm: { short: ['um'], words: ['micron', 'microns', 'micrometre', 'micrometres'] },
  in: { short: ['"', '″', '”', 'ins'], words: ['inch', 'inches'] },
  thou: { words: ['thousandths'] },
  ft: { short: ["'", '′', '’'], words: ['foot', 'feet'] },
  mi: { words: ['mile', 'miles'] },

  kPa: { words: ['kilopascal', 'kilopascals'] },
  MPa: { words: ['megapascal', 'megapascals'] },
  bar: { words: ['bars'] },
  mbar: { short: ['mb'], words: ['millibar', 'millibars'] },
  psi: { short: ['psig', 'lbf/in²', 'lbf/in2', 'lb/in²', 'lb/in2', 'lbs/in²', 'lbs/in2'] },
  'kgf/cm²': { short: ['kgf/cm2', 'kg/cm²', 'kg/cm2', 'kp/cm²', 'kp/cm2'] },
  inHg: { short: ['in Hg', 'in. Hg', 'in-Hg', '"Hg'], words: ['inches of mercury'] },

  kg: { short: ['kgs', 'kilo', 'kilos'], words: ['kilogram', 'kilograms'] },
  g: { short: ['gm', 'gms'], words: ['gram', 'grams'] },
  t: { words: ['tonne', 'tonnes', 'metric ton', 'metric tons'] },
  lb: { short: ['lbs'], words: ['pound', 'pounds'] },
  oz: { words: ['ounce', 'ounces'] },
  'short ton': { short: ['US ton', 'US tons'], words: ['short tons'] },
  'long ton': { short: ['imp ton', 'imp tons', 'UK ton', 'UK tons'], words: ['long tons'] },

  N: { words: ['newton', 'newtons'] },
  kN: { words: ['kilonewton', 'kilonewtons'] },
  lbf: { words: ['pound-force', 'pounds-force'] },
  kgf: { short: ['kp'], words: ['kilogram-force', 'kilograms-force'] },

  '°C': { short: ['C', '℃', '° C', 'degC', 'deg C'], words: celsius('C', 'Celsius') },
  '°F': { short: ['F', '℉', '° F', 'degF', 'deg F'], words: celsius('F', 'Fahrenheit') },

  '°': { short: ['deg', 'degs'], words: ['degree', 'degrees'] },
  turn: { short: ['rev', 'revs'], words: ['revolution', 'revolutions'] },

  'r/min': {
    short: ['rpm', 'rev/min', '1/min', 'min⁻¹', 'min-1'],
    words: ['revolutions per minute'],
  },

  'km/h': { short: ['kmh', 'kph', 'km/hr'], words: ['kilometres per hour', 'kilometers per hour'] },
  mph: { short: ['mi/h'], words: ['miles per hour'] },

  s: { short: ['sec', 'secs'], words: ['second', 'seconds'] },
  min: { short: ['mins'], words: ['minute', 'minutes'] },
  h: { short: ['hr', 'hrs'], words: ['hour', 'hours'] },
  d: { words: ['day', 'days'] },

  '%': { short: ['pct'], words: ['percent', 'per cent'] },
};

/** Names that stand for more than one unit. Nothing is guessed: both are named. */
export const ambiguousSpellings: readonly (readonly [
  names: readonly string[],
  choices: readonly [UnitId, UnitId, ...UnitId[]],
])[] = [
  [
    ['gal', 'gals', 'gallon', 'gallons'],
    ['US gal', 'imp gal'],
  ],
  [
    ['qt', 'qts', 'quart', 'quarts'],
    ['US qt', 'imp qt'],
  ],
  [
    ['pt', 'pts', 'pint', 'pints'],
    ['US pt', 'imp pt'],
  ],
  [
    ['fl oz', 'floz', 'fl. oz', 'fluid ounce', 'fluid ounces'],
    ['US fl oz', 'imp fl oz'],
  ],
  [
    ['ton', 'tons'],
    ['t', 'short ton', 'long ton'],
  ],
  [
    ['mil', 'mils'],
    ['thou', 'mm'],
  ],
];

/** Case-blind spellings that would turn one SI unit into another (milli and mega, nano and newton, knot). */
export const caseMatters: ReadonlySet<string> = new Set(['mpa', 'nm', 'n·m', 'kn', 'kn·m', 'cn·m']);

function us(name: string): readonly string[] {
  return [`US ${name}`, `U.S. ${name}`, `${name} (US)`, `${name} US`, `US${name}`];
}

function imp(name: string): readonly string[] {
  return [`imp ${name}`, `imp. ${name}`, `imperial ${name}`, `UK ${name}`, `${name} (imp)`];
}

function qualified(
  qualify: (name: string) => readonly string[],
  names: readonly string[],
): readonly string[] {
  return names.flatMap(qualify);
}

function celsius(letter: string, name: string): readonly string[] {
  return [
    name,
    `°${name}`,
    `degree ${name}`,
    `degrees ${name}`,
    `deg ${name}`,
    `degree ${letter}`,
    `degrees ${letter}`,
  ];
}

/** Two-part units with each usual mark between the parts. */
function joined(
  first: readonly string[],
  second: readonly string[],
  marks: readonly string[] = ['·', '-', '.', '*', ' ', ''],
): readonly string[] {
  return first.flatMap((a) => second.flatMap((b) => marks.map((mark) => a + mark + b)));
}
