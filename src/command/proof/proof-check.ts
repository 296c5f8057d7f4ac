import { resolve } from 'node:path';
import { type Inspection, KeptInspection, type Store } from '../../report/index.ts';
import type { ManualFiles } from '../../source/index.ts';
import { digest, KeptStore } from '../kept-store.ts';
import { today } from '../today.ts';
import { version } from '../version.ts';

/** The check of one manual that changes again and again: only what depends on a change is analysed anew. */
export class ProofCheck {
  readonly #inspection: KeptInspection;
  readonly #store: KeptStore;
  readonly #before: Store;

  private constructor(store: KeptStore, before: Store) {
    this.#inspection = new KeptInspection(version, digest, before);
    this.#store = store;
    this.#before = before;
  }

  /** Begins with what an earlier check of the folder has kept. */
  static async of(folder: string): Promise<ProofCheck> {
    const store = new KeptStore(resolve(folder));
    return new ProofCheck(store, await store.read());
  }

  check(files: ManualFiles): Inspection {
    return this.#inspection.inspect(files, { today: today() });
  }

  /** Keeps what the last check found for the next one of these files. */
  async keep(files: ManualFiles): Promise<void> {
    await this.#store.writeIfNew(this.#inspection.store, this.#before, files);
  }
}
