import type { UnitsFirst } from './answers.ts';

/** The figures of the example machine. */
export interface Figures {
  /** Lines of manual.yaml below `units:`. */
  readonly units: string;
  readonly smallScrew: string;
  readonly motorBolt: string;
  readonly drainPlug: string;
  readonly capacity: string;
  readonly containers: string;
  readonly guardMass: string;
  readonly deflection: string;
  readonly wrench: string;
}

/**
 * Dry threads, nut factor 0.20, at most 75 % of the proof load: of ISO 898-1 class 8.8 for metric bolts, of SAE J429
 * grade 5 for those of inches. The rest is common practice for a machine of this size.
 */
export const figuresFor: Readonly<Record<UnitsFirst, Figures>> = {
  metric: {
    units: `  torque: [N·m, lbf·ft]
  length: [mm, in]
  volume: [L, US qt]
  mass: [kg, lb]`,
    smallScrew: 'thread: M6, class: 8.8, torque: 9 N·m',
    motorBolt: `thread: M10
    class: 8.8
    # Two stages: the first brings the motor down, the second is the torque.
    torque: [20 N·m, 45 N·m]`,
    drainPlug: 'thread: M14x1.5, torque: 25 N·m',
    capacity: '1.2 L',
    containers: '[1 L, 5 L]',
    guardMass: '3 kg',
    deflection: '6..8 mm',
    wrench: '5 to 50 N·m',
  },
  'inch-first': {
    units: `  torque: [lbf·ft, N·m]
  length: [in, mm]
  volume: [US qt, L]
  mass: [lb, kg]`,
    smallScrew: 'thread: 1/4-20 UNC, grade: 5, torque: 8 lbf·ft',
    motorBolt: `thread: 3/8-16 UNC
    grade: 5
    # Two stages: the first brings the motor down, the second is the torque.
    torque: [15 lbf·ft, 30 lbf·ft]`,
    drainPlug: 'thread: 1/2-20 UNF, torque: 18 lbf·ft',
    capacity: '1.3 US qt',
    containers: '[1 US qt, 1 US gal]',
    guardMass: '7 lb',
    deflection: '0.25..0.31 in',
    wrench: '5 to 40 lbf·ft',
  },
};
