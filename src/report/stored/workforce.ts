import type { MachineName } from '../../catalogue/index.ts';
import { type Outline, outlineOfFront } from '../../link/index.ts';
import type { Look } from '../../rules/index.ts';
import { isProcedureFile, type ManualFiles } from '../../source/index.ts';
import { parseFront } from '../../syntax/index.ts';
import { ShareFiles } from '../divided/share-files.ts';
import type { Sign } from '../divided/sign.ts';
import { Share } from '../share.ts';

/** What is known of a procedure's file: its outline, in full or as its front matter gives it; null where it is none. */
export type Known = readonly [path: string, outline: Outline | null];

/** What is known of the whole manual. */
export interface WholeKnown {
  readonly outlines: readonly Known[];
  /** In order of their files. */
  readonly machines: readonly MachineName[];
}

export interface Looked {
  /** In the order in which they were asked for. */
  readonly looks: readonly Look[];
  /** Of the procedures among them, in full. */
  readonly outlines: readonly Known[];
}

/** One who looks at parts of a manual. All that is said and answered is plain data. */
export interface Worker {
  /** Takes the files of a manual, in order of path. */
  begin(files: ManualFiles): Promise<void>;
  /** The outlines of procedures, as far as their front matter gives them. */
  sign(paths: readonly string[]): Promise<readonly Known[]>;
  /** Is told what is known of the whole; of what it looks at it finds out the rest itself. */
  know(whole: WholeKnown): Promise<void>;
  look(paths: readonly string[]): Promise<Looked>;
}

/** Works in this thread. Of procedures it keeps in memory only what the last look needed. */
export class OwnWorker implements Worker {
  readonly #share = new Share();
  #files: ManualFiles = { texts: [], unreadable: [], others: [] };
  #texts: ReadonlyMap<string, string> = new Map();
  #signs: readonly Sign[] = [];
  #machines: readonly MachineName[] = [];

  async begin(files: ManualFiles): Promise<void> {
    this.#files = files;
    this.#texts = new Map(files.texts.map(({ path, text }) => [path, text]));
  }

  async sign(paths: readonly string[]): Promise<readonly Known[]> {
    return paths.map((path) => {
      const front = parseFront({ path, text: this.#texts.get(path) ?? '' });
      return [path, front ? outlineOfFront(front) : null];
    });
  }

  async know({ outlines, machines }: WholeKnown): Promise<void> {
    const known = new Map(outlines);
    this.#signs = this.#files.texts.map(({ path, text }) => ({
      path,
      length: text.length,
      digest: '',
      outline: known.get(path) ?? undefined,
    }));
    this.#machines = machines;
  }

  async look(paths: readonly string[]): Promise<Looked> {
    const files = {
      ...this.#files,
      signs: this.#signs,
      textOf: async (path: string) => this.#texts.get(path) ?? '',
    };
    const needed = new ShareFiles(files, this.#machines, this.#share);
    const { examination } = await needed.examine(paths);
    const { outlines } = this.#share;
    return {
      looks: paths.map((path) => examination.lookAt(path)),
      outlines: paths
        .filter(isProcedureFile)
        .map((path): Known => [path, outlines.get(path) ?? null]),
    };
  }
}
