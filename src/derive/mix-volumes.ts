import type { Circuit } from '../catalogue/index.ts';
import {
  type Amount,
  computedAmount,
  type Measure,
  printByPolicy,
  type Quantity,
  type UnitPolicy,
} from '../quantity/index.ts';

export interface MixPart {
  readonly name: string;
  readonly share: string;
  /** Empty where capacity or share cannot be read. */
  readonly volume: string;
}

/** The parts of a mix, each as a share by volume of what is poured, the capacity where nothing else is said. Shares that do not add up are shown as they are. */
export function mixVolumes(
  circuit: Circuit,
  policy: UnitPolicy,
  poured: Quantity | undefined = circuit.capacity,
): readonly MixPart[] {
  return circuit.mix.map(({ name, share }) => {
    const percent = share.form === 'single' && share.unit === '%' ? share.amount.value : undefined;
    const volume =
      percent === undefined || poured === undefined || poured.form === 'torque-angle'
        ? ''
        : printByPolicy(shareOf(poured, percent), policy);
    return { name, share: printByPolicy(share, policy), volume };
  });
}

function shareOf(whole: Measure, percent: number): Quantity {
  const part = (amount: Amount): Amount => partOf(amount, percent);
  if (whole.form === 'range') return { ...whole, low: part(whole.low), high: part(whole.high) };
  if (whole.form !== 'tolerance') return { ...whole, amount: part(whole.amount) };
  const tolerance = whole.by === 'share' ? whole.tolerance : part(whole.tolerance);
  return { ...whole, amount: part(whole.amount), tolerance };
}

/** As fine as the whole is given, or ten times finer where the part does not come out even: 50 % of 5 L is 2.5 L. */
function partOf({ value, step }: Amount, percent: number): Amount {
  const part = (value * percent) / 100;
  const steps = part / step;
  const isEven = Math.abs(steps - Math.round(steps)) < 1e-9;
  return computedAmount(part, isEven ? step : step / 10);
}
