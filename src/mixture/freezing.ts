/** What a coolant concentrate is made of. They freeze at different points, so a sheet must say which. */
export type GlycolBase = 'ethylene-glycol' | 'propylene-glycol';

/** Freezing points of glycol and water, by share of glycol in percent by volume, rising. */
export interface FreezingTable {
  readonly name: string;
  /** The published table, as a sheet names it. */
  readonly source: string;
  readonly points: readonly (readonly [percent: number, celsius: number])[];
}

/**
 * Pure glycol and water. A product has inhibitors in it, and its own table rules.
 * Ethylene glycol: ASHRAE Handbook, Fundamentals, freezing points of aqueous ethylene glycol, in the copy of CoolProp
 * (open source, data file "ASHRAE, Ethylene Glycol_TFreeze").
 * Propylene glycol: Lange's Handbook of Chemistry, 15th edition, table 5.13.
 */
export const freezingTables: Readonly<Record<GlycolBase, FreezingTable>> = {
  'ethylene-glycol': {
    name: 'ethylene glycol',
    source: 'ASHRAE Handbook, Fundamentals',
    points: [
      [0, 0],
      [4.4, -1.4],
      [8.9, -3.2],
      [13.6, -5.4],
      [18.1, -7.8],
      [20.1, -8.9],
      [22, -10.2],
      [23.9, -11.4],
      [25.8, -12.7],
      [27.7, -14.1],
      [29.6, -15.4],
      [31.6, -17],
      [33.5, -18.6],
      [35.5, -20.3],
      [37.5, -22.3],
      [39.5, -24.3],
      [41.5, -26.4],
      [43.5, -28.8],
      [45.5, -31.1],
      [47.6, -33.8],
      [49.6, -36.4],
      [50.6, -37.9],
      [51.6, -39.3],
      [52.7, -41.1],
      [54.7, -44.2],
      [56.8, -47.1],
      [57.8, -48.3],
    ],
  },
  'propylene-glycol': {
    name: 'propylene glycol',
    source: 'Lange’s Handbook of Chemistry, 15th edition, table 5.13',
    points: [
      [5, -1.1],
      [10, -2.2],
      [15, -3.9],
      [20, -6.7],
      [25, -8.9],
      [30, -12.8],
      [35, -16.1],
      [40, -20.6],
      [45, -26.7],
      [50, -33.3],
    ],
  },
};

/** The least and the most percent by volume that the table of a glycol covers. */
export function coverOf(base: GlycolBase): { readonly from: number; readonly to: number } {
  const shares = freezingTables[base].points.map(([percent]) => percent);
  return { from: Math.min(...shares), to: Math.max(...shares) };
}

/**
 * The freezing point in °C of so many percent of glycol by volume in water, on a line between the neighbours in the
 * table; undefined outside of the table, where nothing is known.
 */
export function freezingPoint(base: GlycolBase, percent: number): number | undefined {
  const { points } = freezingTables[base];
  for (const [i, [share, celsius]] of points.entries()) {
    if (share === percent) return celsius;
    const next = points[i + 1];
    if (next === undefined || percent < share || percent > next[0]) continue;
    return celsius + ((percent - share) / (next[0] - share)) * (next[1] - celsius);
  }
  return undefined;
}
