import { describe, expect, it } from 'vitest';
import { parseStrength, proofStress, stressArea, torqueFor } from '../../src/joint/index.ts';
import * as inch from './inch-values.ts';
import * as metric from './metric-values.ts';
import { bandOf, threadOf } from './read-joint.ts';

/** One pound-force per square inch in MPa and one pound-force in N (NIST SP 811, App. B.8). */
const psi = 6.894757e-3;
const lbf = 4.448222;
const squareInch = 645.16;

const within = (actual: number, published: number, share: number): void =>
  expect(Math.abs(actual / published - 1)).toBeLessThanOrEqual(share);

describe('stress areas, to the last printed digit', () => {
  it.for(metric.coarseAreas)('%s has pitch %f and %f mm²', ([thread, pitch, area]) => {
    expect(threadOf(thread)).toMatchObject({ pitch });
    expect(Number(stressArea(threadOf(thread)).toPrecision(3))).toBe(area);
  });

  it.for(metric.fineAreas)('%s has %f mm²', ([thread, area]) => {
    expect(Number(stressArea(threadOf(thread)).toPrecision(3))).toBe(area);
  });

  // The inch tables differ from the formula by up to 0.15 % where they round.
  it.for(inch.inchAreas)('%s has %f in²', ([thread, area]) => {
    within(stressArea(threadOf(thread)) / squareInch, area, 0.002);
  });
});

describe('proof stresses', () => {
  it.for(metric.proofStresses)('class %s at %i mm: %i MPa', ([name, diameter, mpa]) => {
    const { value } = parseStrength('class', name);
    expect(value && proofStress(value, diameter)).toBe(mpa);
  });

  it.for(inch.gradeStresses)('grade %s at %f in: %i psi', ([name, diameter, stress]) => {
    const { value } = parseStrength('grade', name);
    expect((value ? proofStress(value, diameter * 25.4) : 0) / psi).toBeCloseTo(stress, 0);
  });
});

describe('proof loads, within 1 % of tables that round', () => {
  it.for(metric.proofLoads)('%s of five classes, in N', ([thread, ...loads]) => {
    for (const [i, name] of metric.proofLoadClasses.entries())
      within(bandOf(thread, { class: name }).proofLoad, loads[i] ?? 0, 0.01);
  });

  it.for(inch.gradeLoads)('%s of three grades, in lbf', ([thread, ...loads]) => {
    for (const [i, grade] of inch.loadGrades.entries())
      within(bandOf(thread, { grade }).proofLoad / lbf, loads[i] ?? 0, 0.01);
  });
});

describe('T = K·d·F', () => {
  it.for(metric.workedTorques)(
    '%s class %s at K = %f and 75 %%: %i N and %f N·m',
    ([thread, name, nutFactor, newtons, newtonMetres]) => {
      const { proofLoad, diameter } = bandOf(thread, { class: name });
      const preload = 0.75 * proofLoad;
      within(preload, newtons, 0.005);
      within(torqueFor(nutFactor, diameter, preload), newtonMetres, 0.005);
    },
  );

  // Common practice, no source: charts give 4940 lbf, 30 lbf·ft at K 0.20 and 23 lbf·ft at K 0.15, rounded down. It is
  // 0.75 of 85 000 psi (SAE J429) on 0.0775 in² (ASME B1.1), then T = K·d·F.
  it('3/8-16 grade 5: 4940 lbf, 30.9 lbf·ft dry, 23.2 lbf·ft oiled', () => {
    const { proofLoad, diameter } = bandOf('3/8-16', { grade: '5' });
    const footPound = lbf * 0.3048;
    within((0.75 * proofLoad) / lbf, 4940, 0.002);
    expect(torqueFor(0.2, diameter, 0.75 * proofLoad) / footPound).toBeCloseTo(30.9, 1);
    expect(torqueFor(0.15, diameter, 0.75 * proofLoad) / footPound).toBeCloseTo(23.2, 1);
  });

  // From the table of AC 43.13-1B: 40 000 psi on 1/4-28 is 1456 lbf, so that 50..70 lbf·in imply K = 0.137..0.192.
  it('1/4-28 at 40 000 psi and 50 to 70 lbf·in: the nut factors 0.137 and 0.192', () => {
    const newtonMetre = lbf * 0.0254;
    const { area, diameter } = bandOf('1/4-28');
    const load = area * 40_000 * psi;
    within(load / lbf, 1456, 0.002);
    within(torqueFor(0.137, diameter, load), 50 * newtonMetre, 0.005);
    within(torqueFor(0.192, diameter, load), 70 * newtonMetre, 0.005);
  });
});
