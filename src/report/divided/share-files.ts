import type { ManualSettings } from '../../../schemas/manual.ts';
import {
  type MachineName,
  ManualReader,
  machineFile,
  manualFile,
  namedAsItsFile,
} from '../../catalogue/index.ts';
import { type Outline, Outlines } from '../../link/index.ts';
import { compareText, isProcedureFile, type TextFile } from '../../source/index.ts';
import type { Examination } from '../examination.ts';
import { NeededFiles } from '../needed-files.ts';
import { Share, type Whole } from '../share.ts';
import type { Sign, SignedFiles } from './sign.ts';

/** Reads in full what some parts of a manual depend on, step by step, as it turns out what that is. */
export class ShareFiles {
  readonly #files: SignedFiles;
  readonly #signs: ReadonlyMap<string, Sign>;
  readonly #machines: readonly MachineName[];
  readonly #texts = new Map<string, TextFile>();
  readonly #share: Share;

  /** `share` is one that has read other parts of the manual before. */
  constructor(files: SignedFiles, machines: readonly MachineName[], share: Share = new Share()) {
    this.#files = files;
    this.#share = share;
    this.#signs = new Map(files.signs.map((sign) => [sign.path, sign]));
    this.#machines = machines;
  }

  /** Ready to look at some parts, and only at those. */
  async examine(own: readonly string[]): Promise<{
    readonly whole: Whole;
    readonly examination: Examination;
    readonly settings: ManualSettings;
  }> {
    await this.#take([manualFile, ...own]);
    let whole = this.#whole();
    for (;;) {
      const needed = new NeededFiles(whole);
      const outlines = this.#share.outlines;
      const links = own.flatMap((path) => outlines.get(path)?.linksTo ?? []);
      const isNew = await this.#take([...own.flatMap((path) => needed.of(path)), ...links]);
      if (!isNew) break;
      whole = this.#whole();
    }
    return {
      whole,
      examination: this.#share.examination(whole),
      settings: this.#share.manual.settings,
    };
  }

  /** Reads what is there and has not been read; false where that is nothing. */
  async #take(paths: readonly string[]): Promise<boolean> {
    const before = this.#texts.size;
    for (const path of paths) {
      if (this.#texts.has(path) || !this.#signs.has(path)) continue;
      this.#texts.set(path, { path, text: await this.#files.textOf(path) });
    }
    if (this.#texts.size === before) return false;
    const texts = [...this.#texts.values()].sort((a, b) => compareText(a.path, b.path));
    this.#share.take({ ...this.#files, texts });
    return true;
  }

  /** The outlines of all: of what has been read in full as they are, of the rest what their front matter says. */
  #whole(): Whole {
    const read = this.#share.outlines;
    const all = this.#files.signs.flatMap(({ path, outline }): readonly Outline[] => {
      const known = read.has(path) ? read.get(path) : outline;
      return known === undefined ? [] : [known];
    });
    return { outlines: new Outlines(all), machines: this.#machines };
  }
}

/** The machines of a manual by name, none read that need not be, and each by itself. */
export async function machinesIn({
  signs,
  textOf,
}: Pick<SignedFiles, 'textOf'> & {
  readonly signs: readonly Pick<Sign, 'path'>[];
}): Promise<readonly MachineName[]> {
  const reader = new ManualReader();
  const settings = { path: manualFile, text: await textOf(manualFile) };
  const names: MachineName[] = [];
  for (const { path } of signs) {
    if (!machineFile.test(path) || isProcedureFile(path)) continue;
    const machine = { path, text: await textOf(path) };
    const id = namedAsItsFile(machine);
    if (id !== undefined) names.push({ id, file: path });
    else {
      const texts = [settings, machine];
      const { machines } = reader.read({ texts, unreadable: [], others: [] });
      names.push(...machines.map((one) => ({ id: one.id, file: one.file })));
    }
  }
  return names;
}
