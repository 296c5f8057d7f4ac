import type { Size } from './generate.ts';

/** Procedures that the jobs of a machine share. */
const shared = 4;

/**
 * A manual of so many procedures, 20 machines from 400 on: with fewer procedures fewer machines, so that most of them
 * are jobs. One job in twenty gets a slip, at least one of each kind where there are jobs enough.
 */
export function sizeOf(procedures: number): Size {
  const machines = Math.max(1, Math.min(20, Math.floor(procedures / 20)));
  const jobs = Math.max(1, Math.round(procedures / machines) - shared);
  return { machines, jobs, slips: Math.min(machines * jobs, Math.max(16, procedures / 20)) };
}

/** How often each thing is measured; the median counts. */
export interface Rounds {
  readonly check: number;
  readonly build: number;
}

export function roundsFor(procedures: number, once: boolean): Rounds {
  if (once) return { check: 1, build: 1 };
  if (procedures > 3000) return { check: 3, build: 1 };
  return procedures > 300 ? { check: 5, build: 3 } : { check: 7, build: 3 };
}
