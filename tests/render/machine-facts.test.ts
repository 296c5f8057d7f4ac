import { expect, test } from 'vitest';
import { bookOf } from './linked-manual.ts';

const machine = `machine: m
name: M
parts:
  gear: { name: gear, limits: { backlash: 0.10..0.25 mm, face-wear: max 2 mm } }
  anvil: { name: anvil, limits: 1.0..1.5 mm }
circuits:
  coolant:
    name: coolant
    fluid: glycol
    capacity: 10 L
    mix: { concentrate: 50 %, water: 50 % }
    containers: { concentrate: [1 L, 5 L] }
consumables:
  grease: { name: grease, containers: [400 g] }
hazards:
  drum: { signal: warning, hazard: The drum can turn, harm: It crushes a hand., avoid: Fit the drum pin first. }
`;

const book = bookOf({
  'manual.yaml': 'title: T\nunits: { length: [mm, in] }\n',
  'machines/m.yaml': machine,
  'p.md': '---\nprocedure: p\ntitle: P\n---\n\n1. :check{item=gear}.\n',
});

const entries = book.machines.flatMap(({ groups }) => groups).flatMap((group) => group.entries);

/** Label and value of the facts of an entry, with plain spaces. */
const facts = (id: string) =>
  entries
    .find((entry) => entry.id === id)
    ?.facts.map(([label, value]) => `${label}: ${value.replaceAll('\u00a0', ' ')}`) ?? [];

// 1 in is 25.4 mm exactly (international yard and pound agreement of 1959), and a limit is rounded to its safe side:
// 0.10 mm = 0.00394 in, 0.25 mm = 0.00984 in, 2 mm = 0.0787 in, 1.0 mm = 0.0394 in, 1.5 mm = 0.0591 in.
test('the machine page gives the limits of an entry, named and in both units', () => {
  expect(facts('gear')).toEqual([
    'Limit, backlash: 0.10–0.25 mm (0.0040–0.0098 in)',
    'Limit, face wear: max 2 mm (max 0.078 in)',
  ]);
  expect(facts('anvil')).toEqual(['Limit: 1.0–1.5 mm (0.040–0.059 in)']);
});

test('it gives the sizes in which a fluid or a consumable is sold', () => {
  expect(facts('coolant')).toContain('Sold in, concentrate: 1 L, 5 L');
  expect(facts('grease')).toContain('Sold in: 400 g');
});

test('it says what a hazard does and what to do', () => {
  expect(facts('drum')).toEqual(
    expect.arrayContaining([
      'What it does: It crushes a hand.',
      'What to do: Fit the drum pin first.',
    ]),
  );
});
