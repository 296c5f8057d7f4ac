import { type MachineName, manualFile } from '../../catalogue/index.ts';
import type { Assets, Outline } from '../../link/index.ts';
import { isProcedureFile, type ManualFiles } from '../../source/index.ts';
import type { Whole } from '../share.ts';

/** A short text that is another for another text. */
export type Digest = (text: string) => string;

/** The digest of a file of the manual. */
export const signOf = (digest: Digest, path: string, text: string): string =>
  digest(`${path}\n${text}`);

/** In place of the digest of a file that is not there. */
export const missingFile = 'missing';

/** What the files of a manual say. */
export interface Signs extends Whole {
  /** Of each text, by path. */
  readonly digests: ReadonlyMap<string, string>;
  readonly assets: Assets;
  readonly unreadable: ManualFiles['unreadable'];
}

/**
 * Keys for what looks give: as long as the key of a part is the same, so is the look at it. All on which it
 * depends goes into its key, and little else, so that an edit changes few keys.
 */
export class LookKeys {
  readonly #signs: Signs;
  readonly #digest: Digest;
  readonly #settings: string;
  readonly #own = new Map<string, string>();
  readonly #whole = new Map<string, string>();
  readonly #lists = new Map<string, string>();

  constructor(signs: Signs, digest: Digest) {
    this.#signs = signs;
    this.#digest = digest;
    this.#settings = signs.digests.get(manualFile) ?? missingFile;
  }

  /** Of any file that is looked at. */
  of(path: string): string {
    if (isProcedureFile(path)) return this.#ofFile(path);
    const { machines, outlines, unreadable, digests } = this.#signs;
    const parts =
      path === manualFile
        ? [machines.map(({ id, file }) => [id, file]), outlines.facts, unreadable]
        : [path, digests.get(path), this.#isFirst(path), this.#assetFiles()];
    return this.#digest(JSON.stringify([this.#settings, parts]));
  }

  /** Whether a machine can be had by its id. */
  #isFirst(path: string): boolean {
    const { machines } = this.#signs;
    const one = machines.find(({ file }) => file === path);
    return machines.find(({ id }) => id === one?.id)?.file === path;
  }

  #ofFile(path: string): string {
    const { outlines, digests } = this.#signs;
    const outline = outlines.byFile.get(path);
    if (outline === undefined)
      return this.#digest(JSON.stringify([this.#settings, path, digests.get(path)]));
    for (const id of outlines.order(outline.id, (one) => this.#whole.has(one)))
      this.#ofProcedure(id);
    return this.#whole.get(outline.id) ?? '';
  }

  /** With all that it leads to, whose keys are there already, those of its own knot left out. */
  #ofProcedure(id: string): void {
    const { outlines } = this.#signs;
    const knot = outlines.knot(id);
    const others = knot.flatMap((one) => outlines.leads(one)).filter((one) => !knot.includes(one));
    const parts = [
      id,
      knot.map((one) => this.#ofText(one)),
      others.map((one) => this.#whole.get(one)),
    ];
    this.#whole.set(id, this.#digest(JSON.stringify(parts)));
  }

  /** Of what a procedure says itself and names. */
  #ofText(id: string): string {
    const known = this.#own.get(id);
    if (known !== undefined) return known;
    const { digests, outlines } = this.#signs;
    const outline = outlines.byId.get(id);
    const parts = outline && [
      this.#settings,
      outline.file,
      digests.get(outline.file),
      this.#machineOf(outline),
      this.#linked(outline),
      this.#named(outline),
      this.#shown(outline),
      outlines.leads(id),
    ];
    const own = this.#digest(JSON.stringify(parts));
    this.#own.set(id, own);
    return own;
  }

  /** The machine that it is about; all of them where it names none that there is. */
  #machineOf({ machine }: Outline): unknown {
    const { machines, digests } = this.#signs;
    const signOf = ({ id, file }: MachineName): unknown => [id, file, digests.get(file)];
    const named = machines.find(({ id }) => id === machine);
    return named ? signOf(named) : this.#list('machines', () => machines.map(signOf));
  }

  #linked({ linksTo }: Outline): unknown {
    const { byFile } = this.#signs.outlines;
    const found = linksTo.map((path) => byFile.get(path)?.anchors);
    const isWhole = found.every((anchors) => anchors !== undefined);
    return isWhole ? found : [found, this.#list('files', () => [...byFile.keys()])];
  }

  /** Other procedures by id: whether they are there, or else which there are that may be meant. */
  #named({ performs, followOn }: Outline): unknown {
    const { byId } = this.#signs.outlines;
    if ([...performs, ...followOn].every((one) => byId.has(one))) return [];
    return this.#list('ids', () => [...byId.keys()]);
  }

  #shown({ figures }: Outline): unknown {
    const { files } = this.#signs.assets;
    if (figures.every((path) => files.has(path))) return figures.map((path) => files.get(path));
    return this.#assetFiles();
  }

  #assetFiles(): string {
    return this.#list('assets', () => [...this.#signs.assets.files]);
  }

  /** The digest of something long that many keys may need. */
  #list(name: string, list: () => unknown): string {
    const known = this.#lists.get(name) ?? this.#digest(JSON.stringify(list()));
    this.#lists.set(name, known);
    return known;
  }
}
