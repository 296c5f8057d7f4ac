import { isDeepStrictEqual } from 'node:util';
import type { ManualFiles } from '../../source/index.ts';
import { CannotRun } from '../cannot-run.ts';
import { noReads, readManualFiles } from '../read-manual-files.ts';
import { editorFor } from './editor.ts';
import { ProofCheck } from './proof-check.ts';
import { type Desk, deskAfter, deskBlocked } from './proof-desk.ts';
import { openProofSite } from './proof-site.ts';
import { watchFolder } from './watch-folder.ts';

export interface ProofOptions {
  /** The port that is tried first. */
  readonly port: number;
  /** The command of the editor, with `{file}`, `{line}` and `{column}`, or its name alone. */
  readonly editor: string | undefined;
  /** Is told each state that the proof shows, from the first on, and how long the check took in milliseconds. */
  readonly onShown: (desk: Desk, milliseconds: number) => void;
  /** Is told what went wrong in the program itself; the proof goes on with what it last showed. */
  readonly onFault: (error: unknown) => void;
}

export interface Proof {
  /** `http://127.0.0.1:4711/` */
  readonly address: string;
  readonly port: number;
  /** The command in which places open; undefined where they are copied. */
  readonly editor: string | undefined;
  close(): Promise<void>;
}

/** Serves a manual and follows its files until it is closed. Throws CannotRun where there is no manual at the start. */
export async function startProof(
  folder: string,
  { port, editor: asked, onShown, onFault }: ProofOptions,
): Promise<Proof> {
  const reads = noReads();
  const check = await ProofCheck.of(folder);
  let turn = Promise.resolve();
  let milliseconds = 0;
  let isAway = false;
  let looking: Promise<void> | undefined;
  let desk = await nextDesk(undefined);
  onShown(desk, milliseconds);
  const editor = editorFor(asked, process.env);
  const site = await openProofSite(desk, { folder, port, editor });
  let watch = await watchFolder(folder, follow);
  // What was written while the site started is read now.
  await followAll();
  const keeping = check.keep(desk.files).catch(onFault);
  const lookOut = setInterval(() => {
    looking ??= lookAgain().finally(() => {
      looking = undefined;
    });
  }, 1000);

  return {
    address: `http://127.0.0.1:${site.port}/`,
    port: site.port,
    editor: editor?.command,
    close: async () => {
      clearInterval(lookOut);
      await looking;
      await watch.close();
      await turn;
      await keeping;
      await site.close();
    },
  };

  async function nextDesk(before: Desk | undefined): Promise<Desk> {
    const files = await readManualFiles(folder, reads);
    isAway = false;
    if (before !== undefined && before.blocked === undefined && isSame(files, before.files))
      return before;
    const start = performance.now();
    const after = deskAfter(before, check.check(files), files);
    milliseconds = performance.now() - start;
    return after;
  }

  /** One reading after the other. */
  function follow(paths: ReadonlySet<string>): Promise<void> {
    turn = turn.then(() => followNow(paths)).catch(onFault);
    return turn;
  }

  async function followNow(paths: ReadonlySet<string>): Promise<void> {
    for (const path of paths) {
      reads.texts.delete(path);
      reads.pictures.delete(path);
    }
    const next = await nextDesk(desk).catch(blockedBy);
    if (next === desk) return;
    desk = next;
    site.show(desk);
    onShown(desk, milliseconds);
  }

  /** What is shown while there is no manual, or the program fails: told once, though it is tried again and again. */
  function blockedBy(error: unknown): Desk {
    isAway = error instanceof CannotRun;
    const { message, advice } =
      error instanceof CannotRun
        ? error
        : { message: 'The check broke off: a fault of the program.', advice: undefined };
    if (desk.blocked?.words === message) return desk;
    if (!isAway) onFault(error);
    milliseconds = 0;
    return deskBlocked(desk, message, advice);
  }

  async function followAll(): Promise<void> {
    await follow(new Set([...reads.texts.keys(), ...reads.pictures.keys()]));
  }

  /** A folder that has gone and comes back is no longer watched: it is looked at again, and then watched anew. */
  async function lookAgain(): Promise<void> {
    if (!isAway) return;
    await followAll();
    if (isAway) return;
    await watch.close();
    watch = await watchFolder(folder, follow);
  }
}

/** Whether a reading gives what the one before gave: an editor may save what nobody changed. */
const isSame = (a: ManualFiles, b: ManualFiles): boolean => isDeepStrictEqual(a, b);
