import type { TextFile } from '../source/index.ts';
import { machineFile } from './read-machine.ts';

/**
 * The id of a machine, told from its file without reading the YAML; undefined where only `readMachine` can tell. Safe
 * whatever else is wrong in the file: a machine whose id cannot be read has that of its file, which is the same one.
 */
export function namedAsItsFile({ path, text }: TextFile): string | undefined {
  const stem = machineFile.exec(path)?.[1];
  const [first, ...more] = text.matchAll(/^machine(?:: +(\S+)[ \t]*$)?/gm);
  if (stem === undefined || first?.[1] !== stem || more.length > 0) return undefined;
  // Quoted keys, flow, markers of documents and the like may hide another `machine`.
  return /^[^A-Za-z#\s]/m.test(text) ? undefined : stem;
}
