/**
 * Tensile stress areas in in². ASME B1.1, as seen at engineersedge.com "ANSI Inch Size Thread Stress and Shear Areas
 * Table", ficientdesign.com and threadchart.net; 1-14 from memory. The first misprints 7/16-14 as 0.0163.
 */
export const inchAreas: readonly (readonly [thread: string, area: number])[] = [
  ['1/4-20 UNC', 0.0318],
  ['5/16-18 UNC', 0.0524],
  ['3/8-16 UNC', 0.0775],
  ['7/16-14 UNC', 0.1063],
  ['1/2-13 UNC', 0.1419],
  ['9/16-12 UNC', 0.182],
  ['5/8-11 UNC', 0.226],
  ['3/4-10 UNC', 0.334],
  ['7/8-9 UNC', 0.462],
  ['1-8 UNC', 0.606],
  ['1/4-28 UNF', 0.0364],
  ['5/16-24 UNF', 0.058],
  ['3/8-24 UNF', 0.0878],
  ['7/16-20 UNF', 0.1187],
  ['1/2-20 UNF', 0.1599],
  ['9/16-18 UNF', 0.203],
  ['5/8-18 UNF', 0.256],
  ['3/4-16 UNF', 0.373],
  ['7/8-14 UNF', 0.509],
  ['1-12 UNF', 0.663],
  ['1-14 UNS', 0.679],
];

/**
 * Stress under proof load in psi at a diameter in inches. SAE J429, the table of mechanical properties, as a fastener
 * maker transcribes it (its name is left out). Grade 2 changes above 3/4 in, grade 5 above 1 in. One public extract
 * gives 65 000 psi for grade 5, which the loads below refute.
 */
export const gradeStresses: readonly (readonly [grade: string, diameter: number, psi: number])[] = [
  ['2', 0.25, 55_000],
  ['2', 0.75, 55_000],
  ['2', 0.875, 33_000],
  ['2', 1.5, 33_000],
  ['5', 0.25, 85_000],
  ['5', 1, 85_000],
  ['5', 1.125, 74_000],
  ['5', 1.5, 74_000],
  ['8', 0.25, 120_000],
  ['8', 1.5, 120_000],
];

/** Proof loads in lbf of grades 2, 5 and 8. SAE J429, as seen in a sheet of loads at lfportal.everettwa.gov, document 454746. */
export const gradeLoads: readonly (readonly [thread: string, ...lbf: number[]])[] = [
  ['1/4-20', 1750, 2700, 3800],
  ['5/16-18', 2900, 4450, 6300],
  ['3/8-16', 4250, 6600, 9300],
  ['7/16-14', 5850, 9050, 12800],
  ['9/16-12', 10000, 15500, 21800],
  ['5/8-11', 12400, 19200, 27100],
  ['3/4-10', 18400, 28400, 40100],
  ['3/8-24', 4800, 7450, 10500],
];
export const loadGrades = ['2', '5', '8'] as const;

/**
 * FAA AC 43.13-1B (1998), Table 7-1: recommended torques in lbf·in, oil-free cadmium-plated threads, as seen at
 * landseaskyspace.com/ac4313/7-44.html: tension nuts from and to, shear nuts from and to, and the two limits.
 */
export const aircraftTorques: readonly (readonly [thread: string, ...lbfIn: number[]])[] = [
  ['8-36', 12, 15, 7, 9, 20, 12],
  ['10-32', 20, 25, 12, 15, 40, 25],
  ['1/4-28', 50, 70, 30, 40, 100, 60],
  ['5/16-24', 100, 140, 60, 85, 225, 140],
  ['3/8-24', 160, 190, 95, 110, 390, 240],
  ['7/16-20', 450, 500, 270, 300, 840, 500],
  ['1/2-20', 480, 690, 290, 410, 1100, 660],
  ['9/16-18', 800, 1000, 480, 600, 1600, 960],
  ['5/8-18', 1100, 1300, 600, 780, 2400, 1400],
  ['3/4-16', 2300, 2500, 1300, 1500, 5000, 3000],
  ['7/8-14', 2500, 3000, 1500, 1800, 7000, 4200],
  ['1-14', 3700, 5500, 2200, 3300, 10000, 6000],
  ['1-1/8-12', 5000, 7000, 3000, 4200, 15000, 9000],
  ['1-1/4-12', 9000, 11000, 5400, 6600, 25000, 15000],
  ['8-32', 12, 15, 7, 9, 20, 12],
  ['10-24', 20, 25, 12, 15, 35, 21],
  ['1/4-20', 40, 50, 25, 30, 75, 45],
  ['5/16-18', 80, 90, 48, 55, 160, 100],
  ['3/8-16', 160, 185, 95, 100, 275, 170],
  ['7/16-14', 235, 255, 140, 155, 475, 280],
  ['1/2-13', 400, 480, 240, 290, 880, 520],
  ['9/16-12', 500, 700, 300, 420, 1100, 650],
  ['5/8-11', 700, 900, 420, 540, 1500, 900],
  ['3/4-10', 1150, 1600, 700, 950, 2500, 1500],
  ['7/8-9', 2200, 3000, 1300, 1800, 4600, 2700],
];

/**
 * ASME PCC-1-2013, Table 1: target torques in lbf·ft for low-alloy steel bolts at 50 ksi on the root area, non-coated
 * and coated; in a one-page public transcription of that table, the standard itself was not seen.
 */
export const flangeTorques: readonly (readonly [thread: string, ...lbfFt: number[]])[] = [
  ['1/2-13', 60, 45],
  ['5/8-11', 120, 90],
  ['3/4-10', 210, 160],
  ['7/8-9', 350, 250],
  ['1-8', 500, 400],
  ['1-1/8-8', 750],
  ['1-1/4-8', 1050],
];
