import {
  constantPitches,
  type InchSize,
  inchesOf,
  inchSizes,
  otherInchThreads,
} from './thread-inch-series.ts';
import type { ReadThread } from './thread-model.ts';

/** `1/2-13 UNC`, `#10-24`, `3/4-16`, `1/2 UNF`; undefined where it is no unified designation. */
export function readInchThread(text: string): ReadThread | undefined {
  const { size: written = '', perInch, series: name } = designation.exec(text)?.groups ?? {};
  if (written === '') return undefined;
  const series = seriesOf(name);
  if (perInch === undefined) return series === undefined ? undefined : alone(written, series);
  const perInchGiven = perInch.endsWith('-1/2') ? Number.parseInt(perInch, 10) + 0.5 : +perInch;
  const candidates = sizesOf(written);
  const fitting = candidates.find((size) => isStandard(size, perInchGiven, series));
  if (fitting !== undefined) return inch(inchesOf(fitting), perInchGiven);
  // A special thread is what its maker says; a whole number is inches then.
  if (series === 'special') return inch(inchesOf(candidates.at(-1) ?? ''), perInchGiven);
  const size = candidates[0] ?? '';
  // 10-30 may be anything; 3/8-19 is a pipe thread.
  if (series === undefined && (candidates.length > 1 || isOther(size, perInchGiven))) return {};
  return { problem: problemOf(size, inchesOf(size)) };
}

type Series = 'coarse' | 'fine' | 'extraFine' | 'constant' | 'special';

const designation =
  /^(?<size>#\d+|No\.? ?\d+|\d+[- ]\d+\/\d+|\d+\/\d+|\d*\.\d+|\d+)(?: ?(?:"|″|in\b))?(?: ?- ?(?<perInch>\d+-1\/2|\d+(?:\.\d+)?))?(?: ?TPI)?(?: ?-? ?(?<series>UNR?[CFS]|UNR?EF|UNR?|UNJ[CF]?|N[CF]|NEF))?(?: ?- ?[1-3][AB]?)?(?:[ -](?:LH|RH|left[ -]hand|right[ -]hand))?(?: ?[x×*] ?[\d./ -]+(?: ?(?:in|mm|"|″))?)?$/i;

function seriesOf(name: string | undefined): Series | undefined {
  const plain = name
    ?.toUpperCase()
    .replace(/^UN[RJ]?/, '')
    .replace(/^N/, '');
  switch (plain) {
    case undefined:
      return undefined;
    case 'C':
      return 'coarse';
    case 'F':
      return 'fine';
    case 'EF':
      return 'extraFine';
    case 'S':
      return 'special';
    default:
      return 'constant';
  }
}

/** The sizes that may be meant: a whole number up to 12 may be a number size or inches. */
function sizesOf(written: string): string[] {
  const number = /^(?:#|No\.? ?)(\d+)$/i.exec(written)?.[1];
  if (number !== undefined) return [`#${Number(number)}`];
  if (/^\d+$/.test(written)) return [`#${Number(written)}`, String(Number(written))];
  if (/^\d*\.\d+$/.test(written)) {
    const value = Number(written);
    return [inchSizes.find(({ diameter }) => Math.abs(diameter - value) < 0.001)?.size ?? written];
  }
  return [written.replace(' ', '-')];
}

function alone(written: string, series: Series): ReadThread | undefined {
  const size = rowOf(sizesOf(written)[0] ?? '');
  const perInch = series === 'coarse' || series === 'fine' ? size?.[series][0] : undefined;
  return size === undefined || perInch === undefined ? undefined : inch(size.diameter, perInch);
}

function isStandard(size: string, perInch: number, series: Series | undefined): boolean {
  const row = rowOf(size);
  const diameter = inchesOf(size);
  if (row === undefined && !isSixteenth(diameter)) return false;
  const isConstant = constantPitches.some(
    ([one, from, to]) => one === perInch && from <= diameter && diameter <= to,
  );
  switch (series) {
    case 'coarse':
    case 'fine':
    case 'extraFine':
      return row?.[series].includes(perInch) ?? false;
    case 'special':
    case 'constant':
    case undefined:
      return isConstant || isNamed(row, perInch);
  }
}

function isNamed(row: InchSize | undefined, perInch: number): boolean {
  return row !== undefined && [row.coarse, row.fine, row.extraFine].flat().includes(perInch);
}

const rowOf = (size: string): InchSize | undefined => inchSizes.find((one) => one.size === size);

/** Sizes of the constant-pitch series go up by sixteenths of an inch. */
const isSixteenth = (diameter: number): boolean =>
  diameter >= 0.25 && Number.isInteger(diameter * 16);

const isOther = (size: string, perInch: number): boolean =>
  otherInchThreads.get(size)?.includes(perInch) ?? false;

function inch(diameter: number, perInch: number): ReadThread {
  return { value: { standard: 'inch', diameter, perInch } };
}

function problemOf(size: string, diameter: number): ReadThread['problem'] {
  const row = rowOf(size);
  if (row !== undefined) return { code: 'no-such-pitch', system: 'inch', size, near: namesOf(row) };
  const usual = inchSizes.filter(({ coarse }) => coarse.length > 0);
  const below = usual.filter((one) => one.diameter < diameter).at(-1);
  const above = usual.find((one) => one.diameter > diameter);
  const near = [below, above].flatMap((one) => (one === undefined ? [] : namesOf(one)));
  return { code: 'no-such-size', system: 'inch', size, near };
}

function namesOf({ size, coarse, fine, extraFine }: InchSize): string[] {
  const named = (all: readonly number[], name: string) =>
    all.slice(0, 1).map((perInch) => `${size}-${perInch} ${name}`);
  const usual = [...named(coarse, 'UNC'), ...named(fine, 'UNF')];
  return usual.length > 0 ? usual : named(extraFine, 'UNEF');
}
