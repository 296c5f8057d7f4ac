import { availableParallelism } from 'node:os';
import { extname } from 'node:path';
import { MessageChannel, type MessagePort } from 'node:worker_threads';
import { Tinypool } from 'tinypool';
import type { Known, Looked, OwnWorker, WholeKnown, Worker } from '../report/index.ts';
import type { ManualFiles } from '../source/index.ts';
import type { Asked } from './check-worker.ts';

/** Below this many characters a thread takes longer to begin than it saves. */
const worthAThread = 300_000;

/** Threads that share the work of a check. */
export class ThreadPool {
  #pool: Tinypool | undefined;
  readonly #ports: MessagePort[] = [];

  /**
   * As many threads as the machine has cores and the work is worth, in characters. Where that is less than two, `own`
   * does it in this thread; where it is more, this thread only waits, since it has less room for the young.
   */
  workersFor(work: number, own: OwnWorker): readonly [Worker, ...Worker[]] {
    const count = Math.min(availableParallelism(), Math.floor(work / worthAThread));
    const [first, ...rest] = Array.from({ length: count }, () => this.#thread(count));
    return first === undefined || rest.length === 0 ? [own] : [first, ...rest];
  }

  async close(): Promise<void> {
    for (const port of this.#ports) port.postMessage('end');
    await this.#pool?.destroy();
  }

  #thread(count: number): Worker {
    this.#pool ??= new Tinypool({
      filename: new URL(`./check-worker${extname(import.meta.url)}`, import.meta.url).href,
      minThreads: count,
      maxThreads: count,
      // Much is made and thrown away at once: with more room for the young, less is moved about.
      resourceLimits: { maxYoungGenerationSizeMb: 64 },
    });
    const { port1, port2 } = new MessageChannel();
    this.#ports.push(port1);
    const ended = this.#pool.run({ port: port2 }, { transferList: [port2] });
    return new Thread(port1, ended);
  }
}

/** Hands work on to a thread. */
class Thread implements Worker {
  readonly #port: MessagePort;
  readonly #ended: Promise<unknown>;

  constructor(port: MessagePort, ended: Promise<unknown>) {
    this.#port = port;
    this.#ended = ended;
    // A thread that was asked nothing, or has answered, may be stopped: only who waits for it is told.
    ended.catch(() => undefined);
  }

  begin(files: ManualFiles): Promise<void> {
    return this.#ask({ do: 'begin', files });
  }

  sign(paths: readonly string[]): Promise<readonly Known[]> {
    return this.#ask({ do: 'sign', paths });
  }

  know(whole: WholeKnown): Promise<void> {
    return this.#ask({ do: 'know', whole });
  }

  look(paths: readonly string[]): Promise<Looked> {
    return this.#ask({ do: 'look', paths });
  }

  /** The answer to one question; a thread is asked the next only when it has answered. */
  #ask<T>(asked: Asked): Promise<T> {
    return new Promise((resolve, reject) => {
      this.#port.once('message', (answer: { readonly value: T } | { readonly fault: unknown }) => {
        if ('fault' in answer) reject(answer.fault);
        else resolve(answer.value);
      });
      this.#ended.catch(reject);
      this.#port.postMessage(asked);
    });
  }
}
