import { resolve } from 'node:path';
import { summaryAsText } from '../report/index.ts';
import type { ExitCode } from './exit-code.ts';
import type { Desk } from './proof/proof-desk.ts';
import { startProof } from './proof/start-proof.ts';
import { complain, say } from './terminal.ts';

export interface ProofCommandOptions {
  readonly port: number;
  readonly editor: string | undefined;
}

/** Serves a manual while it is being written, until it is stopped: then 0. */
export async function proofCommand(
  folder: string,
  { port, editor }: ProofCommandOptions,
): Promise<ExitCode> {
  const isTold = process.stdout.isTTY === true;
  const stopped = new Promise<void>((resolve) => {
    process.once('SIGINT', () => resolve());
    process.once('SIGTERM', () => resolve());
  });
  if (isTold) say(`Checking ${folder} …`);
  const proof = await startProof(resolve(folder), {
    port,
    editor,
    onShown: (desk, milliseconds) => {
      if (isTold) say(lineOf(desk, milliseconds));
    },
    onFault: (error) => {
      complain('tallybolt: a fault of the program, not of the manual. The proof goes on.');
      complain(error instanceof Error ? (error.stack ?? error.message) : String(error));
    },
  });
  if (isTold && proof.port !== port && port !== 0)
    say(`Port ${port} is taken; the proof is at ${proof.port}.`);
  say(`Proof: ${proof.address}`);
  if (isTold) {
    say(
      proof.editor === undefined
        ? 'Places are copied: no editor is known (--editor, $VISUAL or $EDITOR).'
        : `Places open with: ${proof.editor}`,
    );
    say('It follows your files. Ctrl+C ends it.');
  }
  await stopped;
  await proof.close();
  return 0;
}

/** One line: what the manual is like after a check. */
function lineOf({ book, blocked }: Desk, milliseconds: number): string {
  if (blocked !== undefined) return `${blocked.words} The pages stay as they were.`;
  return `${summaryAsText(book.frame.report).trimEnd()} (${Math.round(milliseconds)} ms)`;
}
