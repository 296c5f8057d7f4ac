import {
  type MachineName,
  ManualReader,
  machineFile,
  manualFile,
  type ReadManual,
} from '../catalogue/index.ts';
import {
  type Assets,
  assetsOf,
  KeptLinks,
  type Outline,
  Outlines,
  outlineOf,
} from '../link/index.ts';
import type { WrittenOut } from '../reverse/index.ts';
import { isProcedureFile, type ManualFiles, type TextFile } from '../source/index.ts';
import { parseProcedure } from '../syntax/index.ts';
import { Examination, type Parsed } from './examination.ts';

/** What the rest of a manual may ask of it. */
export interface Whole {
  readonly outlines: Outlines;
  /** In order of their files. */
  readonly machines: readonly MachineName[];
}

interface Read {
  readonly text: string;
  readonly parsed: Parsed;
  readonly outline: Outline | undefined;
}

/**
 * Files of a manual that have been read: all, or a share with all that it leads to. Files are read again only when
 * they have changed.
 */
export class Share {
  readonly #reader = new ManualReader();
  readonly #links = new KeptLinks();
  #files: ManualFiles = { texts: [], unreadable: [], others: [] };
  #manual: ReadManual = this.#reader.read(this.#files);
  #assets: Assets = assetsOf(this.#files);
  #read: ReadonlyMap<string, Read> = new Map();

  /** Takes files in order of path in place of those before. */
  take(files: ManualFiles): void {
    this.#files = files;
    this.#manual = this.#reader.read(files);
    this.#assets = assetsOf(files);
    this.#read = new Map(
      files.texts
        .filter(({ path }) => isProcedureFile(path))
        .map(({ path, text }) => [path, this.#readFile(path, text)]),
    );
  }

  get manual(): ReadManual['value'] {
    return this.#manual.value;
  }

  get assets(): Assets {
    return this.#assets;
  }

  /** Of the machines in it, in order of their files. */
  get machines(): readonly MachineName[] {
    return this.#manual.machines;
  }

  /** Of its procedures, by path; undefined for a file that is none. */
  get outlines(): ReadonlyMap<string, Outline | undefined> {
    return new Map([...this.#read].map(([path, { outline }]) => [path, outline]));
  }

  /** Taken for all of the manual. */
  get whole(): Whole {
    const outlines = [...this.#read.values()].flatMap(({ outline }) => outline ?? []);
    return { outlines: new Outlines(outlines), machines: this.machines };
  }

  /** `known` are procedures that were written out before, with all that they lead to as it is now. */
  examination(whole: Whole, known?: ReadonlyMap<string, WrittenOut>): Examination {
    const texts = new Map(this.#files.texts.map(({ path, text }) => [path, text]));
    return new Examination(
      {
        ...whole,
        manual: this.#manual,
        parsed: new Map([...this.#read].map(([path, { parsed }]) => [path, parsed])),
        assets: this.#assets,
        unreadable: this.#files.unreadable,
        textOf: (file) => texts.get(file) ?? '',
        link: (procedure, manual) => this.#links.of(procedure, manual),
      },
      known,
    );
  }

  #readFile(path: string, text: string): Read {
    const known = this.#read.get(path);
    if (known?.text === text) return known;
    const parsed = parseProcedure({ path, text });
    return { text, parsed, outline: parsed.value && outlineOf(parsed.value) };
  }
}

/** The files of a manual at which `Examination` looks, manual.yaml even where it is missing; in order of path. */
export function partsOf(files: {
  readonly texts: readonly Pick<TextFile, 'path'>[];
}): readonly string[] {
  const paths = files.texts.map(({ path }) => path);
  return [manualFile, ...paths.filter((path) => machineFile.test(path) || isProcedureFile(path))];
}
