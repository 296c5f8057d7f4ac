/** A size of ASME B1.1 with its threads per inch in each series. */
export interface InchSize {
  /** As it is written: `#10`, `1/2`, `1-1/8`. */
  readonly size: string;
  /** Inches. */
  readonly diameter: number;
  readonly coarse: readonly number[];
  readonly fine: readonly number[];
  readonly extraFine: readonly number[];
}

/**
 * Size, UNC, UNF and UNEF of ASME B1.1; 0 where there is none. 1-14 is UNS by the standard, and called UNF in
 * the shop.
 */
const rows: readonly (readonly [string, number, number, number])[] = [
  ['#0', 0, 80, 0],
  ['#1', 64, 72, 0],
  ['#2', 56, 64, 0],
  ['#3', 48, 56, 0],
  ['#4', 40, 48, 0],
  ['#5', 40, 44, 0],
  ['#6', 32, 40, 0],
  ['#8', 32, 36, 0],
  ['#10', 24, 32, 0],
  ['#12', 24, 28, 32],
  ['1/4', 20, 28, 32],
  ['5/16', 18, 24, 32],
  ['3/8', 16, 24, 32],
  ['7/16', 14, 20, 28],
  ['1/2', 13, 20, 28],
  ['9/16', 12, 18, 24],
  ['5/8', 11, 18, 24],
  ['11/16', 0, 0, 24],
  ['3/4', 10, 16, 20],
  ['13/16', 0, 0, 20],
  ['7/8', 9, 14, 20],
  ['15/16', 0, 0, 20],
  ['1', 8, 12, 20],
  ['1-1/16', 0, 0, 18],
  ['1-1/8', 7, 12, 18],
  ['1-3/16', 0, 0, 18],
  ['1-1/4', 7, 12, 18],
  ['1-5/16', 0, 0, 18],
  ['1-3/8', 6, 12, 18],
  ['1-7/16', 0, 0, 18],
  ['1-1/2', 6, 12, 18],
  ['1-9/16', 0, 0, 18],
  ['1-5/8', 0, 0, 18],
  ['1-11/16', 0, 0, 18],
  ['1-3/4', 5, 0, 0],
  ['2', 4.5, 0, 0],
  ['2-1/4', 4.5, 0, 0],
  ['2-1/2', 4, 0, 0],
  ['2-3/4', 4, 0, 0],
  ['3', 4, 0, 0],
  ['3-1/4', 4, 0, 0],
  ['3-1/2', 4, 0, 0],
  ['3-3/4', 4, 0, 0],
  ['4', 4, 0, 0],
];

const given = (perInch: number): readonly number[] => (perInch === 0 ? [] : [perInch]);

export const inchSizes: readonly InchSize[] = rows.map(([size, coarse, fine, extraFine]) => ({
  size,
  diameter: inchesOf(size),
  coarse: given(coarse),
  fine: size === '1' ? [fine, 14] : given(fine),
  extraFine: given(extraFine),
}));

/** Constant-pitch series of ASME B1.1: threads per inch, and the diameters in inches from and to which they go. */
export const constantPitches: readonly (readonly [perInch: number, from: number, to: number])[] = [
  [4, 2.5, 6],
  [6, 1.375, 6],
  [8, 1, 6],
  [12, 0.5625, 6],
  [16, 0.375, 6],
  [20, 0.25, 3],
  [28, 0.216, 1.5],
  [32, 0.138, 1],
];

/** Threads per inch of pipe (ASME B1.20.1, ISO 228-1) and Whitworth (BS 84) threads, which are often written without their series. */
export const otherInchThreads: ReadonlyMap<string, readonly number[]> = new Map([
  ['1/16', [27, 28]],
  ['1/8', [27, 28, 40]],
  ['3/16', [24, 32]],
  ['1/4', [18, 19, 26]],
  ['5/16', [22]],
  ['3/8', [18, 19, 20]],
  ['7/16', [18]],
  ['1/2', [12, 14, 16]],
  ['9/16', [16]],
  ['5/8', [14]],
  ['3/4', [14, 12]],
  ['7/8', [11, 14]],
  ['1', [10, 11, 11.5]],
  ['1-1/8', [9, 11]],
  ['1-1/4', [9, 11, 11.5]],
  ['1-1/2', [8, 11, 11.5]],
  ['1-3/4', [11]],
  ['2', [7, 11, 11.5]],
  ['2-1/4', [4, 11]],
  ['2-1/2', [8, 11]],
  ['3', [8, 11, 3.5]],
  ['4', [8, 11]],
]);

/** The diameter in inches of `#10`, `1/2`, `1-1/8` or `0.5`: a number size is 0.060 in and 0.013 in for each number. */
export function inchesOf(size: string): number {
  if (size.startsWith('#')) return (60 + 13 * Number(size.slice(1))) / 1000;
  const [, whole = '0', above, below] = /^(?:(\d+)-)?(\d+)\/(\d+)$/.exec(size) ?? [];
  if (above === undefined || below === undefined) return Number(size);
  return Number(whole) + Number(above) / Number(below);
}
