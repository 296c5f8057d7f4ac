import { Worker } from 'node:worker_threads';
import { z } from 'zod';

/** What went wrong with one input of a batch: thrown, or no answer in time or memory. */
export interface Fault {
  readonly number: number;
  readonly words: string;
}

export interface BatchResult {
  readonly faults: readonly Fault[];
  /** Time of the processor, which other work on the machine does not change much, by the number of the input. */
  readonly times: readonly { readonly number: number; readonly milliseconds: number }[];
}

export interface Watch {
  /** Of the inputs that are drawn by chance; without it the nasty manuals of these names are tried. */
  readonly seed?: number;
  readonly names?: readonly string[];
  readonly size: number;
  /** Longest time of the processor on one input before the worker is stopped: other work on the machine counts little. */
  readonly seconds: number;
  readonly megabytes: number;
}

const answerSchema = z.object({
  faults: z.array(z.object({ number: z.number(), words: z.string() })),
  times: z.array(z.object({ number: z.number(), milliseconds: z.number() })),
});

/** Runs inputs in a thread with the stack of a usual process. What hangs or swells is stopped, told, and passed over. */
export async function runWatched(watch: Watch): Promise<BatchResult> {
  const faults: Fault[] = [];
  const times: BatchResult['times'][number][] = [];
  for (let from = 0; from < watch.size; ) {
    const ended = await runFrom(from, watch);
    if ('stoppedAt' in ended) {
      faults.push({ number: ended.stoppedAt, words: ended.words });
      from = ended.stoppedAt + 1;
    } else {
      faults.push(...ended.faults);
      times.push(...ended.times);
      from = watch.size;
    }
  }
  return { faults, times };
}

type Ended = BatchResult | { readonly stoppedAt: number; readonly words: string };

function runFrom(from: number, { seed, names, size, seconds, megabytes }: Watch): Promise<Ended> {
  const at = new SharedArrayBuffer(4);
  const watched = new Int32Array(at);
  Atomics.store(watched, 0, -1);
  const worker = new Worker(new URL('fuzz-worker.ts', import.meta.url), {
    workerData: { at, seed, names, size, from },
    resourceLimits: { maxOldGenerationSizeMb: megabytes, stackSizeMb: 1 },
  });
  return new Promise<Ended>((resolve) => {
    let last = { number: -1, since: processorSeconds() };
    const look = setInterval(() => {
      const number = Atomics.load(watched, 0);
      if (number !== last.number) last = { number, since: processorSeconds() };
      const bound = number < 0 ? 60 : seconds;
      if (processorSeconds() - last.since > bound) {
        void worker.terminate();
        end({ stoppedAt: Math.max(number, from), words: `no answer in ${bound} s` });
      }
    }, 250);
    const end = (ended: Ended): void => {
      clearInterval(look);
      resolve(ended);
    };
    worker.on('message', (answer) => end(answerSchema.parse(answer)));
    worker.on('error', (error) =>
      end({
        stoppedAt: Math.max(Atomics.load(watched, 0), from),
        words: error instanceof Error ? error.message : String(error),
      }),
    );
  });
}

function processorSeconds(): number {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1_000_000;
}
