import { type Circuit, glycolShare } from '../catalogue/index.ts';
import { coverOf, freezingPoint, freezingTables, type GlycolBase } from '../mixture/index.ts';
import { computedAmount, printByPolicy, type UnitPolicy } from '../quantity/index.ts';

/** What a sheet says of the point at which a mix of glycol and water freezes. */
export interface FreezingWords {
  /** "Freezes at about −37 °C (−35 °F)", or that the table does not cover the share. */
  readonly point: string;
  /** Where the figure is from, and what rules. */
  readonly source: string;
}

/** Undefined of a circuit that does not say what its concentrate is made of, or not how much of it there is. */
export function freezingWords(circuit: Circuit, policy: UnitPolicy): FreezingWords | undefined {
  const { base } = circuit;
  const percent = glycolShare(circuit);
  if (base === undefined || percent === undefined) return undefined;
  const { name, source } = freezingTables[base];
  const at = freezingText(base, percent, policy);
  const { from, to } = coverOf(base);
  return {
    point:
      at === undefined
        ? `Freezing point not known: the table covers ${from} % to ${to} %`
        : `Freezes at about ${at}`,
    source: `Pure ${name} and water, ${source}. The table of the maker of the concentrate rules.`,
  };
}

/** What interpolation in doubles may be off by. */
const tiny = 1e-6;

/** To a whole degree, which is as near as a table of the pure mix comes to a product. */
export function freezingText(
  base: GlycolBase,
  percent: number,
  policy: UnitPolicy,
): string | undefined {
  const celsius = freezingPoint(base, percent);
  if (celsius === undefined) return undefined;
  // Never colder than the table says: a sheet must not promise a degree that is not there.
  const amount = computedAmount(Math.ceil(celsius - tiny), 1);
  return printByPolicy({ form: 'single', unit: '°C', amount }, policy);
}
