import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { likelySlips } from '../../src/joint/index.ts';
import { printAsWritten } from '../../src/quantity/index.ts';
import { aircraftTorques, flangeTorques } from './inch-values.ts';
import { proofLoads, workedTorques } from './metric-values.ts';
import { bandOf, torqueOf, verdict } from './read-joint.ts';

/** A value as it would be written, without an exponent. */
const digits = (value: number, count: number): string => String(Number(value.toPrecision(count)));

describe('published torques are plausible', () => {
  it.for(aircraftTorques)('AC 43.13-1B: %s', ([thread, ...torques]) => {
    for (const grade of [undefined, { grade: '8' }]) {
      const band = bandOf(thread, grade, 'plated');
      expect(torques.map((one) => verdict(band, `${one} lbf·in`))).toEqual(
        torques.map(() => undefined),
      );
    }
  });

  it.for(aircraftTorques)(
    'AC 43.13-1B: %s, the values to install with, of grade 5',
    ([thread, ...torques]) => {
      const install = torques.slice(0, 4);
      const band = bandOf(thread, { grade: '5' }, 'plated');
      expect(install.map((one) => verdict(band, `${one} lbf·in`))).toEqual(
        install.map(() => undefined),
      );
    },
  );

  // Stud bolts of low-alloy steel, ASTM A193 B7, are about as strong as grade 5.
  it.for(flangeTorques)('ASME PCC-1: %s', ([thread, ...torques]) => {
    const band = bandOf(thread, { grade: '5' });
    expect(torques.map((one) => verdict(band, `${one} lbf·ft`))).toEqual(
      torques.map(() => undefined),
    );
  });

  it.for(workedTorques)('75 %% of the proof load: %s class %s', ([thread, name, , , torque]) => {
    expect(verdict(bandOf(thread, { class: name }), `${torque} N·m`)).toBeUndefined();
  });

  // Shigley: 0.90 of the proof load for joints that stay; from memory.
  it.for(proofLoads)('90 %% of the proof load at K = 0.20: %s', ([thread, , , newtons]) => {
    const torque = (0.2 * Number(thread.slice(1)) * 0.9 * (newtons ?? 0)) / 1000;
    expect(verdict(bandOf(thread, { class: '8.8' }), `${digits(torque, 3)} N·m`)).toBeUndefined();
  });
});

describe('slips', () => {
  const at75 = proofLoads.map(([thread, , , newtons = 0]) => ({
    thread,
    torque: (0.2 * Number(thread.slice(1)) * 0.75 * newtons) / 1000,
  }));
  const slip = (thread: string, torque: string) => {
    const band = bandOf(thread, { class: '8.8' });
    const meant = likelySlips(torqueOf(torque), band).map((one) => printAsWritten(one.torque));
    return { is: verdict(band, torque), meant: meant.map((one) => one.replaceAll('\u00a0', ' ')) };
  };

  it.for(at75)('$thread: N·m written as lbf·ft, and as kgf·m', ({ thread, torque }) => {
    const written = digits(torque, 4);
    expect(slip(thread, `${written} lbf·ft`)).toMatchObject({ is: 'too-high' });
    expect(slip(thread, `${written} lbf·ft`).meant).toContain(`${written} N·m`);
    expect(slip(thread, `${written} kgf·m`).is).toBe('too-high');
  });

  it.for(at75)('$thread: lbf·in written as lbf·ft, and lbf·ft as lbf·in', ({ thread, torque }) => {
    const inches = digits(torque / 0.112985, 4);
    const feet = digits(torque / 1.355818, 4);
    expect(slip(thread, `${inches} lbf·ft`)).toMatchObject({ is: 'too-high' });
    expect(slip(thread, `${inches} lbf·ft`).meant[0]).toBe(`${inches} lbf·in`);
    expect(slip(thread, `${feet} lbf·in`)).toMatchObject({ is: 'too-low' });
    expect(slip(thread, `${feet} lbf·in`).meant[0]).toBe(`${feet} lbf·ft`);
  });

  it.for(at75)('$thread: a decimal point moved either way', ({ thread, torque }) => {
    expect(slip(thread, `${digits(torque * 10, 3)} N·m`).is).toBe('too-high');
    expect(slip(thread, `${digits(torque / 10, 3)} N·m`).is).toBe('too-low');
  });

  it('says what was meant', () => {
    expect(slip('M8', '85 N·m')).toEqual({ is: 'too-high', meant: ['85 lbf·in', '8.5 N·m'] });
    expect(slip('M12', '8 N·m').meant).toEqual(['8 kgf·m', '80 N·m']);
    expect(slip('M10', '50 lbf·ft')).toEqual({ is: 'too-high', meant: ['50 N·m'] });
  });
});

describe('what is judged', () => {
  const band = bandOf('M10', { class: '8.8' });

  it('looks at the highest stage, and at the torque before a turn', () => {
    expect(verdict(band, '20 N·m', '90 N·m')).toBe('too-high');
    expect(verdict(band, '90 N·m', 'back off 1 turn', '20 N·m')).toBe('too-high');
    expect(verdict(band, '90 N·m + 90°')).toBe('too-high');
    expect(verdict(band, '30 N·m + 90°')).toBeUndefined();
    expect(verdict(band, '90°')).toBeUndefined();
  });

  it('takes the upper end of a range, and no lower limit for too low', () => {
    expect(verdict(band, '50..70 N·m')).toBe('too-high');
    expect(verdict(band, '50 ± 10 N·m')).toBeUndefined();
    expect(verdict(band, 'min 2 N·m')).toBeUndefined();
    expect(verdict(band, 'max 2 N·m')).toBe('too-low');
  });

  it('finds nothing too low that is turned on, backed off or of no known strength', () => {
    expect(verdict(band, '2 N·m')).toBe('too-low');
    expect(verdict(band, '2 N·m + 90°')).toBeUndefined();
    expect(verdict(band, '2 N·m', 'back off 1/4 turn')).toBeUndefined();
    expect(verdict(bandOf('M10'), '2 N·m')).toBeUndefined();
  });

  it('allows oil less than dry threads, and dry stainless steel more', () => {
    expect(verdict(band, '64 N·m')).toBeUndefined();
    expect(verdict(bandOf('M10', { class: '8.8' }, 'oiled'), '64 N·m')).toBe('too-high');
    expect(bandOf('M10', { class: 'A2-70' }).full).toBeGreaterThan(
      bandOf('M10', { class: 'A2-70' }, 'oiled').full,
    );
  });

  it('takes an unknown bolt for the strongest there is', () => {
    expect(bandOf('M10').full).toBe(bandOf('M10', { class: '12.9' }).full);
    expect(bandOf('1/2-13').proofLoad).toBeGreaterThan(bandOf('1/2-13', { grade: '8' }).proofLoad);
  });
});

const coarse = proofLoads.map(([thread]) => thread);
const classes = ['4.6', '5.6', '4.8', '5.8', '6.8', '8.8', '9.8', '10.9', '12.9'];
/** Neighbours in order, and not the last. */
const indexIn = (all: readonly string[]) => fc.integer({ min: 0, max: all.length - 2 });

describe('laws', () => {
  it('a larger thread of the same class stands more', () => {
    fc.assert(
      fc.property(indexIn(coarse), fc.constantFrom(...classes), (i, name) => {
        const [a, b] = [coarse[i] ?? '', coarse[i + 1] ?? ''].map((one) =>
          bandOf(one, { class: name }),
        );
        expect(a?.full).toBeLessThan(b?.full ?? 0);
        expect(a?.least).toBeLessThan(b?.least ?? 0);
      }),
    );
  });

  it('a stronger class stands more on the same thread', () => {
    fc.assert(
      fc.property(indexIn(classes), fc.constantFrom(...coarse), (i, thread) => {
        const [a, b] = [classes[i] ?? '', classes[i + 1] ?? ''].map((name) =>
          bandOf(thread, { class: name }),
        );
        expect(a?.full).toBeLessThan(b?.full ?? 0);
      }),
    );
  });

  it('a finer pitch of the same diameter stands more', () => {
    fc.assert(
      fc.property(fc.constantFrom('8', '10', '12', '20', '30'), (diameter) => {
        expect(bandOf(`M${diameter}x1`).full).toBeGreaterThan(bandOf(`M${diameter}`).full);
      }),
    );
  });

  it('the verdict does not depend on the unit', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...coarse),
        fc.constantFrom(...classes),
        fc.integer({ min: -300, max: 300 }),
        (thread, name, hundredths) => {
          const band = bandOf(thread, { class: name });
          const newtonMetres = band.usual.middle * 10 ** (hundredths / 100);
          // Nearer to an end of the band than the digits tell, the two may differ.
          const isNear = [band.full, band.least ?? 0].some(
            (end) => Math.abs(newtonMetres / end - 1) < 1e-4,
          );
          fc.pre(!isNear);
          const metric = verdict(band, `${newtonMetres.toFixed(6)} N·m`);
          expect(verdict(band, `${(newtonMetres / 1.3558179483).toFixed(6)} lbf·ft`)).toBe(metric);
          expect(verdict(band, `${(newtonMetres / 0.112984829).toFixed(6)} lbf·in`)).toBe(metric);
        },
      ),
    );
  });

  it('what is called usual is never implausible', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...coarse),
        fc.option(fc.constantFrom(...classes)),
        (thread, name) => {
          const band = bandOf(thread, name === null ? undefined : { class: name });
          expect(band.usual.high).toBeLessThan(band.full);
          expect(band.usual.low).toBeGreaterThan(band.least ?? 0);
        },
      ),
    );
  });
});
