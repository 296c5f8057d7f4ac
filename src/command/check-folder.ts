import { resolve } from 'node:path';
import type { Report } from '../../schemas/report.ts';
import {
  emptyStore,
  type Inspection,
  inspectStored,
  KeptInspection,
  OwnWorker,
  type StoredInspection,
} from '../report/index.ts';
import type { ManualFiles } from '../source/index.ts';
import { digest, KeptStore } from './kept-store.ts';
import { announce } from './progress.ts';
import { readManualFiles } from './read-manual-files.ts';
import { ThreadPool } from './thread-pool.ts';
import { today } from './today.ts';
import { version } from './version.ts';

interface Folder {
  readonly folder: string;
  readonly files: ManualFiles;
  readonly textOf: (file: string) => string;
}

export interface Checked extends Inspection, Folder {}

export interface CheckedReport
  extends Folder,
    Pick<StoredInspection, 'procedures' | 'levels' | 'looked'> {
  readonly report: Report;
}

/** Reads and checks the manual in a folder. */
export async function checkFolder(folder: string): Promise<Checked> {
  const read = await readFolder(folder);
  const told = announce(`Checking ${read.files.texts.length} files`, read.files.texts.length);
  const kept = new KeptStore(read.folder, undefined);
  const before = await kept.read();
  const inspection = new KeptInspection(version, digest, before);
  const { report, linked } = inspection.inspect(read.files, { today: today() });
  await kept.writeIfNew(inspection.store, before, read.files);
  told();
  return { report, linked, ...read };
}

export interface Keeping {
  /** Where what is found is kept for the next check; the user's folder for such files when undefined. */
  readonly keepIn: string | undefined;
  /** Neither takes what an earlier check has kept, nor keeps anything. */
  readonly afresh: boolean;
}

/** The same for the report alone: with what an earlier check has kept, and on all cores where that is worth it. */
export async function checkForReport(
  folder: string,
  { keepIn, afresh }: Keeping,
): Promise<CheckedReport> {
  const read = await readFolder(folder);
  const count = read.files.texts.length;
  const told = announce(`Checking ${count} files`, count);
  const kept = afresh ? undefined : new KeptStore(read.folder, keepIn);
  const own = new OwnWorker();
  const pool = new ThreadPool();
  try {
    const before = (await kept?.read()) ?? emptyStore;
    const { report, procedures, levels, looked, store } = await inspectStored(read.files, {
      version,
      digest,
      today: today(),
      store: before,
      workers: (work) => pool.workersFor(work, own),
    });
    await kept?.writeIfNew(store, before, read.files);
    return { report, procedures, levels, looked, ...read };
  } finally {
    told();
    await pool.close();
  }
}

async function readFolder(folder: string): Promise<Folder> {
  const files = await readManualFiles(resolve(folder));
  const texts = new Map(files.texts.map(({ path, text }) => [path, text]));
  return { folder: resolve(folder), files, textOf: (file) => texts.get(file) ?? '' };
}

/** YYYY-MM-DD, in UTC. */
