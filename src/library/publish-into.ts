import { execFile } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { notTheCode } from './not-the-code.ts';

/** The command beside this file, in the language that this file is in: it runs from source and built. */
const command = fileURLToPath(
  new URL(`../command/start.${import.meta.url.endsWith('.ts') ? 'ts' : 'js'}`, import.meta.url),
);

/**
 * Publishes a manual into a folder, which it replaces as a whole. A process of its own does it: Astro keeps its content layer in
 * variables of the process, and one build may not run within another. Rejects with the command's words where it could not.
 */
export async function publishInto(out: string, folder: string, draft: boolean): Promise<void> {
  const words = [command, 'publish', folder, '--to', out, ...(draft ? ['--draft'] : [])];
  const { code, told } = await ran(words);
  // 1 is said of findings too, with which everything was written.
  const isWritten = told.out.includes(' published: ');
  if (!isWritten)
    throw notTheCode(`The manual was not published (exit code ${code}).\n${told.err}`);
}

interface Ran {
  readonly code: number | string | null;
  readonly told: { readonly out: string; readonly err: string };
}

function ran(words: readonly string[]): Promise<Ran> {
  return new Promise((done) => {
    execFile(process.execPath, words, { maxBuffer: 1 << 28 }, (error, out, err) =>
      done({ code: error?.code ?? 0, told: { out, err } }),
    );
  });
}
