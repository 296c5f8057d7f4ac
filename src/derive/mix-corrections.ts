import { type Circuit, glycolShare } from '../catalogue/index.ts';
import { correctionOf } from '../mixture/index.ts';
import {
  canonical,
  computedAmount,
  convert,
  mainUnit,
  printByPolicy,
  type UnitPolicy,
} from '../quantity/index.ts';
import { freezingText } from './freezing-words.ts';

/** One row of the table that says how a mix is brought back to its share. */
export interface MixCorrection {
  /** "20 %" */
  readonly measured: string;
  /** What such a mix freezes at, where that is known. */
  readonly freezes: string | undefined;
  /** "2.6 L (0.67 US gal)" */
  readonly replace: string;
  /** "coolant concentrate" */
  readonly by: string;
}

/**
 * For a measured share of the concentrate, how much is drained and replaced by what: in steps of 10 % below the right
 * share, and two above it. Empty where the circuit has no mix of concentrate and water, or no capacity.
 */
export function mixCorrections(circuit: Circuit, policy: UnitPolicy): readonly MixCorrection[] {
  const target = glycolShare(circuit);
  const { capacity, base, mix } = circuit;
  const [concentrate, water] = mix;
  if (target === undefined || target === 0 || concentrate === undefined) return [];
  const litres = capacity && canonical(capacity).high;
  if (litres === undefined || capacity === undefined) return [];
  const tens = Array.from({ length: 10 }, (_, i) => i * 10);
  const below = tens.filter((percent) => percent < target);
  const above = tens.filter((percent) => percent > target).slice(0, 2);
  return [...below, ...above].flatMap((percent) => {
    const correction = correctionOf(percent, target);
    if (correction === undefined) return [];
    // Twelve digits, so that 3.75 is not taken for the double just below it.
    const exact = Number((litres.value * correction.replaced).toPrecision(12));
    // As fine as a measuring jug: a tenth of a litre, finer below one litre.
    const amount = computedAmount(exact, exact < 1 ? 0.01 : 0.1);
    const { value } = convert({ form: 'single', unit: 'L', amount }, mainUnit(capacity));
    return [
      {
        measured: `${percent} %`,
        freezes: base && freezingText(base, percent, policy),
        replace: printByPolicy(value ?? { form: 'single', unit: 'L', amount }, policy),
        by: correction.pourIn === 'concentrate' ? concentrate.name : (water?.name ?? 'water'),
      },
    ];
  });
}
