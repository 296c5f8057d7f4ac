import { createHash, hash } from 'node:crypto';
import { mkdir, readdir, readFile, rm, stat } from 'node:fs/promises';
import { homedir } from 'node:os';
import { join } from 'node:path';
import writeFileAtomic from 'write-file-atomic';
import { emptyStore, type Store } from '../report/index.ts';
import type { ManualFiles } from '../source/index.ts';
import { programPrint } from './program-print.ts';

/** A text for each text, alike for no two. */
export const digest = (text: string): string => hash('sha256', text, 'base64');

/**
 * What a check keeps for the next one on disk: one file a manual. It may be deleted at any time, and checks that run
 * side by side replace it whole. What is broken, or was written by another version, counts as nothing.
 */
export class KeptStore {
  readonly #manual: string;
  readonly #into: string | undefined;

  /** Of the manual in a folder; `into` is where it is kept, else the user's folder for such files. */
  constructor(manual: string, into?: string) {
    this.#manual = manual;
    this.#into = into;
  }

  /** A machine may have no user's folder: then nothing is kept. */
  get #folder(): string {
    return this.#into ?? cacheFolder();
  }

  get #file(): string {
    return join(this.#folder, `${hash('sha256', this.#manual).slice(0, 32)}.json`);
  }

  async read(): Promise<Store> {
    try {
      const text = await readFile(this.#file, 'utf8');
      const end = text.indexOf('\n');
      const body = text.slice(end + 1);
      // What this very version wrote, as its digest proves, is not looked over again.
      return text.slice(0, end) === headOf(body) ? JSON.parse(body) : emptyStore;
    } catch {
      return emptyStore;
    }
  }

  /** Writes what a check gives, if it is more than was there, and the manual is large enough to be worth it. */
  async writeIfNew(store: Store, before: Store, { texts }: ManualFiles): Promise<void> {
    if (texts.reduce((sum, { text }) => sum + text.length, 0) < worthKeeping) return;
    if (Object.keys(store.looks).some((key) => before.looks[key] === undefined))
      await this.write(store);
  }

  /** A store that cannot be written is no fault of the manual: the next check does without. */
  async write(store: Store): Promise<void> {
    const body = JSON.stringify(store);
    try {
      await mkdir(this.#folder, { recursive: true });
      await writeFileAtomic(this.#file, `${headOf(body)}\n${body}`, { fsync: false });
      await this.#clear();
    } catch {
      // Nothing to say: the report is complete without it.
    }
  }

  /** Takes away what nobody has used for two months: manuals come and go, and their names are not known here. */
  async #clear(): Promise<void> {
    for (const name of await readdir(this.#folder)) {
      if (!/^[0-9a-f]{32}\.json$/.test(name)) continue;
      const file = join(this.#folder, name);
      if (Date.now() - (await stat(file)).mtimeMs > 60 * days) await rm(file, { force: true });
    }
  }
}

/** A manual of fewer characters is checked in a moment. */
const worthKeeping = 100_000;
const days = 24 * 60 * 60 * 1000;

const headOf = (body: string): string => {
  const print = createHash('sha256').update(programPrint()).update(body).digest('base64');
  return `tallybolt ${print}`;
};

/** By the XDG Base Directory Specification; on Windows the folder for what belongs to this machine only. */
function cacheFolder(): string {
  const { XDG_CACHE_HOME: xdg, LOCALAPPDATA: local } = process.env;
  const home = xdg || (process.platform === 'win32' && local) || join(homedir(), '.cache');
  return join(home, 'tallybolt');
}
