import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Catalogue } from '../../src/catalogue/index.ts';
import { removalTies, type Tie, tiedGroups } from '../../src/derive/index.ts';
import { linkedManual } from '../render/linked-manual.ts';

function machineOf(yaml: string): Catalogue {
  const manual = linkedManual({
    'manual.yaml': 'title: Test\n',
    'machines/m.yaml': `machine: m\nname: M\n${yaml}`,
  });
  const machine = manual.manual.machines.get('m');
  if (machine === undefined) throw new Error('the machine cannot be read');
  return machine;
}

const words = (ties: readonly Tie[]): string[] =>
  ties.map(({ from, to, kind }) => `${from.id} ${kind} ${to.id}`);

describe('what ties items together', () => {
  test('is what they hold, are behind, are on and are in, the one that goes first before the other', () => {
    const machine = machineOf(`
fasteners: { bolt: { name: bolt, holds: cover }, plug: { name: plug } }
parts:
  cover: { name: cover }
  pump: { name: pump, behind: cover }
  rotor: { name: rotor, in: pump }
  seal: { name: seal, in: pump, behind: pump }
connections: { hose: { name: hose, type: hose, on: pump } }
`);
    expect(words(removalTies(machine))).toEqual([
      'bolt holds cover',
      'cover behind pump',
      'hose on pump',
      'pump in rotor',
      'pump behind seal',
    ]);
  });

  test('leaves out items that nothing ties, and gives the larger group first', () => {
    const machine = machineOf(`
fasteners: { bolt: { name: bolt, holds: [cover, lid] }, nut: { name: nut, holds: cap }, plug: { name: plug } }
parts: { cover: { name: cover }, lid: { name: lid }, cap: { name: cap } }
`);
    const groups = tiedGroups(removalTies(machine));
    expect(groups.map(({ items }) => items.map(({ id }) => id))).toEqual([
      ['bolt', 'cover', 'lid'],
      ['cap', 'nut'],
    ]);
    expect(groups.map(({ centre, part }) => [centre.id, part])).toEqual([
      ['bolt', undefined],
      ['cap', undefined],
    ]);
  });

  test('parts what is too large at the item in the middle, which is in each part', () => {
    const parts = Array.from({ length: 30 }, (_, i) => [
      `a${i}: { name: a${i}, behind: hood }`,
      `b${i}: { name: b${i}, behind: a${i} }`,
    ]).flat();
    const machine = machineOf(`parts:\n  hood: { name: hood }\n  ${parts.join('\n  ')}\n`);
    const groups = tiedGroups(removalTies(machine));
    expect(groups.map(({ part }) => part)).toEqual([
      { number: 1, of: 2 },
      { number: 2, of: 2 },
    ]);
    for (const { items, centre, leftOut } of groups) {
      expect(items.length).toBeLessThanOrEqual(40);
      expect(items.map(({ id }) => id)).toContain('hood');
      expect([centre.id, leftOut]).toEqual(['hood', 0]);
    }
  });
});

test('every tie is in one picture or counted as left out, and no picture has more than 40 items', () => {
  const links = fc.array(fc.tuple(fc.nat({ max: 79 }), fc.nat({ max: 79 })), { maxLength: 160 });
  fc.assert(
    fc.property(links, (pairs) => {
      const parts = Array.from({ length: 80 }, (_, i) => {
        const behind = pairs.filter(([to]) => to === i).map(([, from]) => `p${from}`);
        return `p${i}: { name: p${i}, behind: [${[...new Set(behind)].join(', ')}] }`;
      });
      const ties = removalTies(machineOf(`parts:\n  ${parts.join('\n  ')}\n`));
      const groups = tiedGroups(ties);
      const shown = groups.flatMap((group) => words(group.ties));
      const lost = groups
        .filter(({ part }) => part === undefined || part.number === 1)
        .reduce((sum, { leftOut }) => sum + leftOut, 0);
      expect(new Set(shown).size).toBe(shown.length);
      expect(shown.length + lost).toBe(ties.length);
      for (const { items } of groups) expect(items.length).toBeLessThanOrEqual(40);
    }),
    { numRuns: 40 },
  );
});
