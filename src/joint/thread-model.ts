/** Nominal diameter and pitch in mm. */
export interface MetricThread {
  readonly standard: 'metric';
  readonly diameter: number;
  readonly pitch: number;
}

/** Nominal diameter in inches. */
export interface InchThread {
  readonly standard: 'inch';
  readonly diameter: number;
  readonly perInch: number;
}

/** A screw thread whose strength can be worked out. */
export type Thread = MetricThread | InchThread;

/** A designation that looks metric or unified, but that the standard does not have. */
export interface ThreadProblem {
  readonly code: 'no-such-size' | 'no-such-pitch';
  readonly system: 'metric' | 'inch';
  /** The size as it is understood: `M12`, `1/2`, `#10`. */
  readonly size: string;
  /** Standard designations near by, the usual one first. */
  readonly near: readonly string[];
}

export interface ReadThread {
  readonly value?: Thread;
  readonly problem?: ThreadProblem;
}
