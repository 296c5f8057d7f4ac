import { parentPort, workerData } from 'node:worker_threads';
import { z } from 'zod';
import { describedRules } from '../../src/command/rule-pages.ts';
import { batchOf } from './fuzz-input.ts';
import { nastyManuals } from './nasty-manuals.ts';
import { tryInput } from './try-input.ts';

/** What the worker is asked for: the inputs of one batch, or the nasty manuals from one on. */
const taskSchema = z.object({
  /** The number of the input that is being tried, for the one who watches. */
  at: z.instanceof(SharedArrayBuffer),
  seed: z.number().optional(),
  size: z.number(),
  names: z.array(z.string()).optional(),
  from: z.number(),
});

const { at, seed, size, from, names = [] } = taskSchema.parse(workerData);
const watched = new Int32Array(at);
const rules = await describedRules();
const inputs =
  seed === undefined
    ? nastyManuals()
        .filter(({ name }) => names.includes(name))
        .map(({ input }) => input())
    : batchOf(seed, size);
const faults: { readonly number: number; readonly words: string }[] = [];
const times: { readonly number: number; readonly milliseconds: number }[] = [];
for (const [number, input] of inputs.entries()) {
  if (number < from) continue;
  Atomics.store(watched, 0, number);
  const before = process.cpuUsage();
  try {
    tryInput(input, rules);
  } catch (error) {
    faults.push({
      number,
      words: error instanceof Error ? (error.stack ?? error.message) : String(error),
    });
  }
  const { user, system } = process.cpuUsage(before);
  times.push({ number, milliseconds: (user + system) / 1000 });
}
parentPort?.postMessage({ faults, times });
