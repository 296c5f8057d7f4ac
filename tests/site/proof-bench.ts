import { cp, mkdir, mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Desk } from '../../src/command/proof/proof-desk.ts';
import { type Proof, startProof } from '../../src/command/proof/start-proof.ts';

/** A copy of the demo manual with a proof of it, and a script in the place of an editor. */
export interface ProofBench {
  readonly folder: string;
  readonly proof: Proof;
  /** Faults of the program so far. */
  readonly faults: readonly unknown[];
  read(path: string): Promise<string>;
  /** Writes a file, and waits until the proof shows another state. */
  write(path: string, content: string | Uint8Array): Promise<Desk>;
  remove(path: string): Promise<Desk>;
  /** What the editor was called with, one line a call. */
  opened(): Promise<readonly string[]>;
  clear(): Promise<void>;
}

export async function makeProofBench(): Promise<ProofBench> {
  const home = await mkdtemp(join(tmpdir(), 'tallybolt-proof-test-'));
  const folder = join(home, 'manual');
  await cp('content', folder, { recursive: true });
  const log = join(home, 'opened.txt');
  const editor = join(home, 'editor.mjs');
  await writeFile(log, '');
  await writeFile(
    editor,
    `import { appendFileSync } from 'node:fs';
appendFileSync(${JSON.stringify(log)}, process.argv.slice(2).join(' ') + '\\n');\n`,
  );
  const faults: unknown[] = [];
  let waiting: ((desk: Desk) => void) | undefined;
  const proof = await startProof(folder, {
    port: 0,
    editor: `"${process.execPath}" ${editor} {file} {line} {column}`,
    onShown: (desk) => waiting?.(desk),
    onFault: (error) => faults.push(error),
  });
  const after = async (work: () => Promise<void>): Promise<Desk> => {
    const shown = new Promise<Desk>((resolve) => {
      waiting = resolve;
    });
    await work();
    return await shown;
  };
  return {
    folder,
    proof,
    faults,
    read: (path) => readFile(join(folder, path), 'utf8'),
    write: (path, content) =>
      after(async () => {
        await mkdir(join(folder, path, '..'), { recursive: true });
        await writeFile(join(folder, path), content);
      }),
    remove: (path) => after(() => rm(join(folder, path))),
    opened: async () => (await readFile(log, 'utf8')).split('\n').filter((line) => line !== ''),
    clear: async () => {
      await proof.close();
      await rm(home, { recursive: true, force: true });
    },
  };
}
