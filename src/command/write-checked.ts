import { readFile } from 'node:fs/promises';
import writeFileAtomic from 'write-file-atomic';
import { reasonOf } from './reason-of.ts';

/** Why a writer's file was left as it is: somebody has changed it since it was checked, or it cannot be written. */
export type NotWritten =
  | { readonly is: 'changed' }
  | { readonly is: 'shut'; readonly reason: string };

/**
 * Writes a writer's file through a temporary one and a rename, so that it is always whole, and only if it still reads
 * as it did when it was checked. Undefined when it is written.
 */
export async function writeChecked(
  path: string,
  before: string,
  after: string,
): Promise<NotWritten | undefined> {
  try {
    if ((await readFile(path, 'utf8')) !== before) return { is: 'changed' };
    await writeFileAtomic(path, after);
    return undefined;
  } catch (error) {
    return { is: 'shut', reason: reasonOf(error) };
  }
}
