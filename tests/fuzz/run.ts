import { appendFile, mkdir } from 'node:fs/promises';
import { dirname } from 'node:path';
import { parseArgs } from 'node:util';
import { batchOf, fuzzKinds } from './fuzz-input.ts';
import { nastyManuals } from './nasty-manuals.ts';
import { runWatched } from './run-watched.ts';

const size = 5_000;

/**
 * The long run: `npm run fuzz -- --inputs 1000000 --seed 1`. Prints a line for each fault, and how far it is.
 * `--nasty` tries the manuals that were made to break programs instead, and tells how long each takes.
 * `--from` goes on after so many inputs of the same seed; `--log` takes the lines as well.
 */
const { values } = parseArgs({
  options: {
    inputs: { type: 'string', default: '1000000' },
    seed: { type: 'string', default: '1' },
    from: { type: 'string', default: '0' },
    log: { type: 'string' },
    nasty: { type: 'boolean', default: false },
  },
});
const [wanted, seed, from] = [Number(values.inputs), Number(values.seed), Number(values.from)];
if (values.log !== undefined) await mkdir(dirname(values.log), { recursive: true });

if (values.nasty) {
  for (const { name } of nastyManuals()) {
    const { faults, times } = await runWatched({
      names: [name],
      size: 1,
      seconds: 120,
      megabytes: 3072,
    });
    const [fault] = faults;
    await tell(`${name}: ${fault?.words ?? `${Math.round(times[0]?.milliseconds ?? 0)} ms`}`);
  }
  process.exit();
}

const counts = new Map(fuzzKinds.map((kind) => [kind, 0]));
const told = new Map<string, number>();
let slowest = { milliseconds: 0, where: '' };
let tried = from - (from % size);
for (; tried < wanted; tried += size) {
  const batch = seed * 1_000_003 + tried / size;
  const result = await runWatched({ seed: batch, size, seconds: 10, megabytes: 1024 });
  const inputs = batchOf(batch, size);
  for (const { kind } of inputs) counts.set(kind, (counts.get(kind) ?? 0) + 1);
  for (const { number, words } of result.faults) {
    const key = words.split('\n').slice(0, 2).join(' ');
    told.set(key, (told.get(key) ?? 0) + 1);
    if (told.get(key) === 1)
      await tell(
        `FAULT in batch ${batch}, input ${number}: ${words}\n${JSON.stringify(inputs[number])}`,
      );
  }
  for (const { number, milliseconds } of result.times) {
    if (milliseconds <= slowest.milliseconds) continue;
    slowest = { milliseconds, where: `batch ${batch}, input ${number}` };
    if (milliseconds > 2_000) await tell(`SLOW: ${JSON.stringify(inputs[number])}`);
  }
  if ((tried / size) % 10 === 0) await tell(summary(tried + size));
}
await tell(summary(tried));

function summary(done: number): string {
  const kinds = [...counts].map(([kind, count]) => `${kind} ${count}`).join(', ');
  return `${done - from} inputs (${kinds}) from ${from} of seed ${seed}: ${told.size} kinds of fault; slowest ${Math.round(slowest.milliseconds)} ms (${slowest.where})`;
}

async function tell(line: string): Promise<void> {
  console.log(line);
  if (values.log !== undefined) await appendFile(values.log, `${line}\n`);
}
