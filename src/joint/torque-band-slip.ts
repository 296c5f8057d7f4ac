import { canonical, computedAmount, type Torque } from '../quantity/index.ts';
import type { TorqueBand } from './torque-band.ts';

/** What was probably meant by a torque that is implausible. */
export interface Slip {
  readonly is: 'unit' | 'decimal point';
  readonly torque: Torque;
}

/**
 * The same digits in another unit of torque, and with the decimal point moved, where that gives a usual torque: of
 * several units the one nearest to the middle. The unit first.
 */
export function likelySlips(torque: Torque, band: TorqueBand): readonly Slip[] {
  const away = (one: Torque): number => Math.abs(Math.log(sizeOf(one) / band.usual.middle));
  const isUsual = (one: Torque): boolean =>
    sizeOf(one) >= band.usual.low && sizeOf(one) <= band.usual.high;
  const inUnit = units
    .filter((unit) => unit !== torque.unit)
    .map((unit): Torque => ({ ...torque, unit }))
    .filter(isUsual)
    .toSorted((a, b) => away(a) - away(b))[0];
  const moved = shifts.flatMap((shift) => shifted(torque, shift) ?? []).find(isUsual);
  return [
    ...(inUnit === undefined ? [] : [{ is: 'unit', torque: inUnit } as const]),
    ...(moved === undefined ? [] : [{ is: 'decimal point', torque: moved } as const]),
  ];
}

const units = ['N·m', 'lbf·ft', 'lbf·in', 'kgf·m', 'kgf·cm'] as const;
const shifts = [0.1, 10] as const;

function shifted(torque: Torque, by: number): Torque | undefined {
  if (torque.form !== 'single') return undefined;
  // Twelve digits are without the binary error of the product.
  return { ...torque, amount: computedAmount(Number((torque.amount.value * by).toPrecision(12))) };
}

function sizeOf(torque: Torque): number {
  const { low, high } = canonical(torque);
  return (high ?? low)?.value ?? 0;
}
