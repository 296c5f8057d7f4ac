import fc from 'fast-check';
import { expect, test } from 'vitest';
import { nearest } from '../../src/source/index.ts';

const keys = ['name', 'count', 'torque', 'thread', 'tightness', 'part-number', 'single-use'];

test.each([
  ['cuont', 'count'],
  ['tourque', 'torque'],
  ['partnumber', 'part-number'],
  ['part_number', 'part-number'],
  ['Name', 'name'],
  ['tightnes', 'tightness'],
])('%s was meant as %s', (word, meant) => {
  expect(nearest(word, keys)).toBe(meant);
});

test.each(['colour', 'x', '', 'thickness-of-plate', 'n'.repeat(1e6)])(
  '%s resembles none',
  (word) => {
    expect(nearest(word, keys)).toBeUndefined();
  },
);

const word = fc.stringMatching(/^[a-z]{3,12}$/);

test('a word is nearest to itself', () => {
  fc.assert(
    fc.property(word, fc.array(word), (one, others) => nearest(one, [...others, one]) === one),
  );
});

test('one slip of any sort is forgiven in a word of three letters or more', () => {
  const slips = fc.constantFrom('add', 'drop', 'change', 'swap');
  fc.assert(
    fc.property(word, slips, fc.nat(), (one, slip, n) => {
      const at = n % (one.length - 1);
      const changed = {
        add: `${one.slice(0, at)}q${one.slice(at)}`,
        drop: one.slice(0, at) + one.slice(at + 1),
        change: `${one.slice(0, at)}q${one.slice(at + 1)}`,
        swap: one.slice(0, at) + one.charAt(at + 1) + one.charAt(at) + one.slice(at + 2),
      }[slip];
      expect(nearest(changed, [one])).toBe(one);
    }),
  );
});

test('of equals the first', () => {
  expect(nearest('bolt-c', ['bolt-a', 'bolt-b'])).toBe('bolt-a');
});
