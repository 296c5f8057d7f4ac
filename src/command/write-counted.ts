import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import writeFileAtomic from 'write-file-atomic';
import { CannotRun } from './cannot-run.ts';
import { reasonOf } from './reason-of.ts';

export interface Change {
  /** From the folder of the manual. */
  readonly file: string;
  /** As it was when it was checked. */
  readonly before: string;
  readonly after: string;
}

export interface RefusedChange {
  readonly file: string;
  readonly why: string;
}

/**
 * Writes each file through a temporary one and a rename, and only if it still reads as it did when it was checked.
 * Answers with those that are left as they are.
 */
export async function writeCounted(
  folder: string,
  changes: readonly Change[],
): Promise<readonly RefusedChange[]> {
  const refused: RefusedChange[] = [];
  for (const { file, before, after } of changes) {
    try {
      const path = join(folder, file);
      const now = await readFile(path, 'utf8');
      if (now !== before) throw new CannotRun('it was changed since it was checked; run it again');
      await writeFileAtomic(path, after);
    } catch (error) {
      const why =
        error instanceof CannotRun ? error.message : `it cannot be written: ${reasonOf(error)}`;
      refused.push({ file, why });
    }
  }
  return refused;
}
