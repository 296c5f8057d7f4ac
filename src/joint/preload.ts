/**
 * The short form T = K·d·F: torque in N·m for a preload in N on a thread of a nominal diameter in mm. The nut
 * factor K is found by trial; it is not the coefficient of friction.
 */
export function torqueFor(nutFactor: number, diameter: number, preload: number): number {
  return (nutFactor * diameter * preload) / 1000;
}

/**
 * Share of the proof load for joints that are taken apart again: 0.75 (Shigley, Mechanical Engineering Design).
 */
export const reusableShare = 0.75;
