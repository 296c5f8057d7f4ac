import { type Amount, computedAmount, type Torque } from '../quantity/index.ts';

/** Lengths in one unit, the angle between extension and wrench in degrees: 0 in line and longer, 180 pointing back. */
export interface WrenchExtension {
  /** From the drive to the middle of the grip. */
  readonly length: number;
  /** From the drive to the bolt. */
  readonly extension: number;
  readonly angle: number;
}

/**
 * Of the torque at the bolt, the part that the wrench shows: L / (L + E·cos α), after US Army TM 9-254; at 90° all of it.
 * Undefined where a length is not above zero, or the extension reaches back to the grip or beyond.
 */
export function settingShare({ length, extension, angle }: WrenchExtension): number | undefined {
  const reach = length + extension * cosine(angle);
  return length > 0 && extension > 0 && reach > 0 ? length / reach : undefined;
}

/** What to set the wrench to for a torque at the bolt. Both ends of a range, a limit and a tolerance are converted. */
export function wrenchSetting(torque: Torque, share: number): Torque {
  const set = ({ value, step }: Amount): Amount => computedAmount(steady(value * share), step);
  switch (torque.form) {
    case 'single':
    case 'limit':
      return { ...torque, amount: set(torque.amount) };
    case 'range':
      return { ...torque, low: set(torque.low), high: set(torque.high) };
    case 'tolerance': {
      const { by, tolerance } = torque;
      const width = by === 'share' ? tolerance : set(tolerance);
      return { ...torque, amount: set(torque.amount), tolerance: width };
    }
  }
}

const cosine = (degrees: number): number => steady(Math.cos((degrees * Math.PI) / 180));

/** Without the last digits of a double, so that a setting of 60 is not rounded up from 60.000000000000007. */
const steady = (value: number): number => {
  const rounded = Number(value.toPrecision(12));
  return Math.abs(rounded) < 1e-12 ? 0 : rounded;
};
