import type { Fastener } from '../../src/catalogue/index.ts';

/** Stress areas in mm², ISO 898-1. */
const stressAreas: Readonly<Record<string, number>> = {
  M5: 14.2,
  M6: 20.1,
  M8: 36.6,
  M10: 58.0,
  M12: 84.3,
  'M12x1.5': 88.1,
  M16: 157,
};

/** Stress under proof load in MPa up to 16 mm, ISO 898-1. */
const proofStresses: Readonly<Record<string, number>> = { '8.8': 580, '10.9': 830 };

/** Nut factors of clean dry steel and of oiled threads, as machine-design handbooks give them. */
const nutFactors = { dry: 0.2, oiled: 0.15 } as const;

/** The last torque of a fastener in N·m, and the one that brings it to 75 % of its proof load. */
export interface TorqueAndLimit {
  readonly given: number;
  readonly full: number;
}

/**
 * T = K·d·F with F = 0.75·As·Sp, the handbook rule for joints that are taken apart again. Undefined where the
 * fastener has no thread, class or torque.
 */
export function torqueAndLimit({
  thread = '',
  torque,
  ...rest
}: Fastener): TorqueAndLimit | undefined {
  const area = stressAreas[thread];
  const stress = proofStresses[rest.class ?? ''];
  if (area === undefined || stress === undefined || torque === undefined) return undefined;
  const threads = torque.threads === 'oiled' ? 'oiled' : 'dry';
  const metres = Number(/^M(\d+)/.exec(thread)?.[1]) / 1000;
  return {
    given: Number(/^([\d.]+) N·m$/.exec(torque.written.at(-1) ?? '')?.[1]),
    full: nutFactors[threads] * metres * 0.75 * area * stress,
  };
}
