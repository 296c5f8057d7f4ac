import type { MachineName } from '../../catalogue/index.ts';
import { type Outline, Outlines } from '../../link/index.ts';
import type { Look } from '../../rules/index.ts';
import { isProcedureFile, type ManualFiles, type TextFile } from '../../source/index.ts';
import { machinesIn } from '../divided/share-files.ts';
import { batchFor, inBatches } from '../in-batches.ts';
import type { Whole } from '../share.ts';
import type { Store } from './store.ts';
import type { Known, Worker } from './workforce.ts';

type Workers = readonly [Worker, ...Worker[]];

/** The files of a manual, shared out among workers in batches, so that only a few are in memory in full at a time. */
export class Shares {
  readonly #files: ManualFiles;
  readonly #texts: ReadonlyMap<string, TextFile>;
  readonly #digests: ReadonlyMap<string, string>;
  /** In full, by path. */
  readonly #outlines = new Map<string, Outline | null>();
  readonly #workersFor: (work: number) => Workers;
  #machines: readonly MachineName[] = [];
  #workers: Promise<Workers> | undefined;

  /** `files` in order of path; `store` is what is known of them. */
  constructor(
    files: ManualFiles,
    digests: ReadonlyMap<string, string>,
    store: Store,
    workersFor: (work: number) => Workers,
  ) {
    this.#files = files;
    this.#texts = new Map(files.texts.map((file) => [file.path, file]));
    this.#digests = digests;
    this.#workersFor = workersFor;
    for (const { path } of files.texts) {
      const outline = store.outlines[digests.get(path) ?? ''];
      if (isProcedureFile(path) && outline !== undefined) this.#outlines.set(path, outline);
    }
  }

  /** Looks at the procedures that are not known, by path; after that, all outlines are known in full. */
  async lookAtUnknown(): Promise<ReadonlyMap<string, Look>> {
    const textOf = async (path: string): Promise<string> => this.#texts.get(path)?.text ?? '';
    this.#machines = await machinesIn({ signs: this.#files.texts, textOf });
    const unknown = this.#files.texts.filter(
      ({ path }) => isProcedureFile(path) && !this.#outlines.has(path),
    );
    const signed: Known[] = [];
    await this.#shareOut(unknown, async (worker, batch) => {
      for (const known of await worker.sign(batch)) signed.push(known);
    });
    return await this.#lookWith(unknown, [...this.#outlines, ...signed]);
  }

  /** Looks at some files, by path, when all outlines are known. */
  async look(paths: readonly string[]): Promise<ReadonlyMap<string, Look>> {
    const files = paths.map((path) => this.#texts.get(path) ?? { path, text: '' });
    return await this.#lookWith(files, [...this.#outlines]);
  }

  /** Known in full once what was unknown has been looked at. */
  get whole(): Whole {
    const outlines = [...this.#outlines.values()].filter((outline) => outline !== null);
    return { outlines: new Outlines(outlines), machines: this.#machines };
  }

  /** What is known now of the files, for a store. */
  get outlines(): Store['outlines'] {
    return Object.fromEntries(
      [...this.#outlines].map(([path, one]) => [this.#digests.get(path) ?? '', one]),
    );
  }

  async #lookWith(
    files: readonly TextFile[],
    outlines: readonly Known[],
  ): Promise<ReadonlyMap<string, Look>> {
    const found = new Map<string, Look>();
    if (files.length === 0) return found;
    const workers = await this.#workersAtWork(files);
    const known = { outlines, machines: this.#machines };
    await Promise.all(workers.map((worker) => worker.know(known)));
    await this.#shareOut(files, async (worker, batch) => {
      const looked = await worker.look(batch);
      for (const [i, look] of looked.looks.entries()) found.set(batch[i] ?? '', look);
      for (const [path, outline] of looked.outlines) this.#outlines.set(path, outline);
    });
    return found;
  }

  /** Gives files out in order, a batch at a time to whoever has nothing to do. */
  async #shareOut(
    files: readonly TextFile[],
    work: (worker: Worker, batch: readonly string[]) => Promise<void>,
  ): Promise<void> {
    if (files.length === 0) return;
    const workers = await this.#workersAtWork(files);
    const batches = batchesOf(files, workers.length);
    await Promise.all(
      workers.map(async (worker, at) => {
        // Each begins in a stretch of its own, so that what files have in common is read by few.
        for (let next = batches.take(at); next !== undefined; next = batches.take(at))
          await work(worker, next);
      }),
    );
  }

  #workersAtWork(files: readonly TextFile[]): Promise<Workers> {
    this.#workers ??= this.#begin(files.reduce((sum, { text }) => sum + text.length, 0));
    return this.#workers;
  }

  async #begin(work: number): Promise<Workers> {
    const workers = this.#workersFor(work);
    await Promise.all(workers.map((worker) => worker.begin(this.#files)));
    return workers;
  }
}

interface Batches {
  /** The next batch of one's own stretch, or of another that is not done yet; undefined when nothing is left. */
  take(worker: number): readonly string[] | undefined;
}

/** Files in batches, cut into a stretch for each worker of about the same length. */
function batchesOf(files: readonly TextFile[], workers: number): Batches {
  const total = files.reduce((sum, { text }) => sum + text.length + 1, 0);
  const cut: { path: string; length: number }[][] = Array.from({ length: workers }, () => []);
  let given = 0;
  for (const { path, text } of files) {
    const turn = Math.min(workers - 1, Math.floor((given / total) * workers));
    cut[turn]?.push({ path, length: text.length });
    given += text.length + 1;
  }
  const stretches = cut.map((stretch) => inBatches(stretch, batchFor(total, workers)));
  return {
    take: (worker) =>
      stretches[worker]?.shift() ?? stretches.toSorted((a, b) => b.length - a.length)[0]?.pop(),
  };
}
