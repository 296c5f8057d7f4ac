/**
 * Stress areas in mm², metric coarse. ISO 898-1, as seen in the public tables engineeringtoolbox.com "Metric Bolts -
 * Minimum Ultimate Tensile and Proof Loads" and usefastener.com "EN ISO 898-1 minimum ultimate tensile loads, coarse".
 */
export const coarseAreas: readonly (readonly [thread: string, pitch: number, area: number])[] = [
  ['M4', 0.7, 8.78],
  ['M5', 0.8, 14.2],
  ['M6', 1, 20.1],
  ['M7', 1, 28.9],
  ['M8', 1.25, 36.6],
  ['M10', 1.5, 58.0],
  ['M12', 1.75, 84.3],
  ['M14', 2, 115],
  ['M16', 2, 157],
  ['M18', 2.5, 192],
  ['M20', 2.5, 245],
  ['M22', 2.5, 303],
  ['M24', 3, 353],
  ['M27', 3, 459],
  ['M30', 3.5, 561],
];

/** Stress areas in mm², metric fine. ISO 898-1, from memory. */
export const fineAreas: readonly (readonly [thread: string, area: number])[] = [
  ['M8x1', 39.2],
  ['M10x1.25', 61.2],
  ['M10x1', 64.5],
  ['M12x1.5', 88.1],
  ['M12x1.25', 92.1],
  ['M14x1.5', 125],
  ['M16x1.5', 167],
  ['M18x1.5', 216],
  ['M20x1.5', 272],
  ['M22x1.5', 333],
  ['M24x2', 384],
  ['M27x2', 496],
  ['M30x2', 621],
];

/**
 * Stress under proof load in MPa at a diameter in mm. ISO 898-1, as seen at usefastener.com "Mechanical and physical
 * properties, EN ISO 898-1". Class 8.8 changes above 16 mm.
 */
export const proofStresses: readonly (readonly [
  className: string,
  diameter: number,
  mpa: number,
])[] = [
  ['4.6', 12, 225],
  ['4.8', 12, 310],
  ['5.6', 12, 280],
  ['5.8', 12, 380],
  ['6.8', 12, 440],
  ['8.8', 8, 580],
  ['8.8', 16, 580],
  ['8.8', 18, 600],
  ['8.8', 30, 600],
  ['9.8', 12, 650],
  ['10.9', 12, 830],
  ['10.9', 30, 830],
  ['12.9', 12, 970],
  ['12.9', 30, 970],
];

/**
 * Proof loads in N, classes 4.6, 5.8, 8.8, 10.9 and 12.9. ISO 898-1, the table of proof loads for coarse threads, as
 * a fastener supplier transcribes it (its name is left out). The table rounds, so 1 % is allowed.
 */
export const proofLoads: readonly (readonly [thread: string, ...newtons: number[]])[] = [
  ['M4', 1980, 3340, 5100, 7290, 8520],
  ['M5', 3200, 5400, 8230, 11800, 13800],
  ['M6', 4520, 7640, 11600, 16700, 19500],
  ['M8', 8240, 13900, 21200, 30400, 35500],
  ['M10', 13000, 22000, 33700, 48100, 56300],
  ['M12', 19000, 32000, 48900, 70000, 81800],
  ['M14', 25900, 43700, 66700, 95500, 112000],
  ['M16', 35300, 59700, 91000, 130000, 152000],
  ['M18', 43200, 73000, 115000, 159000, 186000],
  ['M20', 55100, 93100, 147000, 203000, 238000],
  ['M22', 68200, 115000, 182000, 252000, 294000],
  ['M24', 79400, 134000, 212000, 293000, 342000],
  ['M27', 103000, 174000, 275000, 381000, 445000],
];
export const proofLoadClasses = ['4.6', '5.8', '8.8', '10.9', '12.9'] as const;

/**
 * Torques in N·m at 75 % of the proof load (Shigley, Mechanical Engineering Design, reusable joints). Not published:
 * worked out by hand from the areas and stresses above with the same formula, F = 0.75·As·Sp and T = K·d·F, so that
 * they prove the units and the lookup and not the formula.
 */
export const workedTorques: readonly (readonly [
  thread: string,
  className: string,
  nutFactor: number,
  newtons: number,
  newtonMetres: number,
])[] = [
  ['M8', '8.8', 0.2, 15921, 25.5],
  ['M10', '8.8', 0.2, 25230, 50.5],
  ['M12', '10.9', 0.15, 52477, 94.5],
  ['M20', '8.8', 0.2, 110250, 441],
];
