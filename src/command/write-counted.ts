import { join } from 'node:path';
import { writeChecked } from './write-checked.ts';

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
 * Writes each file that still reads as it did when it was checked. Answers with those that are left as they are.
 */
export async function writeCounted(
  folder: string,
  changes: readonly Change[],
): Promise<readonly RefusedChange[]> {
  const refused: RefusedChange[] = [];
  for (const { file, before, after } of changes) {
    const left = await writeChecked(join(folder, file), before, after);
    if (left?.is === 'changed')
      refused.push({ file, why: 'it was changed since it was checked; run it again' });
    if (left?.is === 'shut') refused.push({ file, why: `it cannot be written: ${left.reason}` });
  }
  return refused;
}
