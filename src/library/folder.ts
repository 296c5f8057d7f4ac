import { readManualFiles } from '../command/index.ts';
import type { ManualFiles } from '../source/index.ts';

/** What `readManual` throws: `message` says why there is no manual, `advice` what to do. */
export { CannotRun } from '../command/index.ts';

/**
 * Reads the folder of a manual, as the command does: its texts, the names of its other files, and what its pictures
 * are. Links that lead out of the folder are not followed. A file that cannot be read is told in `unreadable`.
 * Rejects with `CannotRun` where the folder cannot be read or has no manual.yaml.
 */
export function readManual(folder: string): Promise<ManualFiles> {
  return readManualFiles(folder);
}
