import type { LinkedManual } from '../../src/link/index.ts';
import { inspect } from '../../src/report/index.ts';
import type { ManualFiles } from '../../src/source/index.ts';

/** A manual with a title and nothing else. */
export function linkedManual(): { linked: LinkedManual; files: ManualFiles } {
  const files: ManualFiles = {
    texts: [{ path: 'manual.yaml', text: 'title: Example manual\n' }],
    unreadable: [],
    others: [],
  };
  return { linked: inspect(files, 'test').linked, files };
}
