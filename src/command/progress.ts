import { readdir } from 'node:fs/promises';
import { canOverwrite } from './terminal.ts';

/** How far long work is, shown to a person who waits. */
export interface Progress {
  readonly reach: (done: number) => void;
  /** Takes the bar away. */
  readonly end: () => void;
}

const unseen: Progress = { reach: () => {}, end: () => {} };

/** A bar on standard error, where that is a terminal; nothing in a pipe, a file, a log of CI, or for one piece. */
export async function progress(doing: string, total: number): Promise<Progress> {
  if (!canOverwrite(process.stderr) || total < 2) return unseen;
  const { SingleBar } = await import('cli-progress');
  const bar = new SingleBar({
    format: `${doing} [{bar}] {value} of {total}`,
    barCompleteChar: '#',
    barIncompleteChar: '.',
    stream: process.stderr,
    clearOnComplete: true,
    hideCursor: false,
  });
  bar.start(total, 0);
  return { reach: (done) => bar.update(done), end: () => bar.stop() };
}

/** So many pieces take long enough that a person wonders. */
const many = 300;

/** A line on standard error while work goes on that cannot say how far it is; the answer takes it away. */
export function announce(doing: string, pieces: number): () => void {
  if (!canOverwrite(process.stderr) || pieces < many) return () => {};
  process.stderr.write(`${doing} …`);
  return () => {
    process.stderr.write('\r\u001b[K');
  };
}

/** Does work that fills a folder, and shows how many names of `total` are in it. */
export async function whileFilling(
  folder: string,
  { doing, total }: { readonly doing: string; readonly total: number },
  work: () => Promise<void>,
): Promise<void> {
  const bar = await progress(doing, total);
  const look = setInterval(() => {
    void readdir(folder).then(
      (names) => bar.reach(Math.min(names.length, total)),
      // It is not there yet.
      () => undefined,
    );
  }, 250);
  if (bar === unseen) clearInterval(look);
  try {
    await work();
  } finally {
    clearInterval(look);
    bar.end();
  }
}
