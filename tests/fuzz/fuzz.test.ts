import { expect, test } from 'vitest';
import { nastyManuals, quickNames } from './nasty-manuals.ts';
import { runWatched } from './run-watched.ts';

// The long run is `npm run fuzz`. Seconds are those of the processor, on one input.
test('inputs drawn by chance, of every kind: nothing is thrown, hangs or swells', async () => {
  const { faults, times } = await runWatched({
    seed: 20_250_101,
    size: 600,
    seconds: 10,
    megabytes: 1024,
  });
  expect(faults).toEqual([]);
  expect(times).toHaveLength(600);
}, 180_000);

test('manuals that were made to break programs do not', async () => {
  const names = nastyManuals().flatMap(({ name }) => (quickNames.includes(name) ? [name] : []));
  expect(new Set(names)).toEqual(new Set(quickNames));
  const { faults, times } = await runWatched({
    names,
    size: names.length,
    seconds: 20,
    megabytes: 2048,
  });
  expect(faults.map(({ number, words }) => `${names[number]}: ${words}`)).toEqual([]);
  expect(times).toHaveLength(names.length);
}, 300_000);
