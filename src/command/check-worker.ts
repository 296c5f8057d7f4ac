import type { MessagePort } from 'node:worker_threads';
import { OwnWorker, type WholeKnown } from '../report/index.ts';
import type { ManualFiles } from '../source/index.ts';

/** What a thread is asked to do, one thing after the other. */
export type Asked =
  | { readonly do: 'begin'; readonly files: ManualFiles }
  | { readonly do: 'sign'; readonly paths: readonly string[] }
  | { readonly do: 'know'; readonly whole: WholeKnown }
  | { readonly do: 'look'; readonly paths: readonly string[] };

/** Works for the one at the other end of a port, until told that it is the end. */
export default function work({ port }: { readonly port: MessagePort }): Promise<void> {
  const worker = new OwnWorker();
  return new Promise((resolve) => {
    port.on('message', (asked: Asked | 'end') => {
      if (asked === 'end') {
        port.close();
        resolve();
      } else answer(worker, asked, port);
    });
  });
}

/** A fault of the program comes out where the work was asked for. */
async function answer(worker: OwnWorker, asked: Asked, port: MessagePort): Promise<void> {
  try {
    port.postMessage({ value: await doAsked(worker, asked) });
  } catch (fault) {
    port.postMessage({ fault });
  }
}

function doAsked(worker: OwnWorker, asked: Asked): Promise<unknown> {
  switch (asked.do) {
    case 'begin':
      return worker.begin(asked.files);
    case 'sign':
      return worker.sign(asked.paths);
    case 'know':
      return worker.know(asked.whole);
    case 'look':
      return worker.look(asked.paths);
  }
}
