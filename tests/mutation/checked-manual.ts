import type { Finding } from '../../schemas/finding.ts';
import { readManual } from '../../src/catalogue/index.ts';
import { assetsOf, type LinkedManual, Outlines, outlineOf } from '../../src/link/index.ts';
import { Examination, type Material, type Parsed, partsOf } from '../../src/report/index.ts';
import { conclude, type Look } from '../../src/rules/index.ts';
import { isProcedureFile, type ManualFiles } from '../../src/source/index.ts';
import { parseProcedure } from '../../src/syntax/index.ts';

/**
 * A clean manual that is checked again and again with one procedure changed. Only what can differ is looked
 * at: the procedure, and those that perform it; texts that have not changed are read once.
 */
export class CheckedManual {
  readonly files: ManualFiles;
  readonly linked: LinkedManual;
  readonly #material: Omit<Material, 'outlines' | 'textOf'>;
  readonly #texts: ReadonlyMap<string, string>;
  readonly #parsed: ReadonlyMap<string, Parsed>;
  /** By path. */
  readonly #looks: ReadonlyMap<string, Look>;

  constructor(files: ManualFiles) {
    this.files = files;
    this.#texts = new Map(files.texts.map(({ path, text }) => [path, text]));
    this.#parsed = new Map(
      files.texts
        .filter(({ path }) => isProcedureFile(path))
        .map((file) => [file.path, parseProcedure(file)]),
    );
    const [assets, manual] = [assetsOf(files), readManual(files)];
    const { unreadable } = files;
    this.#material = {
      manual,
      machines: manual.machines,
      assets,
      parsed: this.#parsed,
      unreadable,
    };
    const examination = this.#examination(this.#parsed);
    this.linked = examination.linked;
    this.#looks = new Map(partsOf(files).map((path) => [path, examination.lookAt(path)]));
  }

  /** The rules, of level error or warning, that find something with this text in a file; none for a clean text. */
  found(path: string, text: string): readonly string[] {
    const parsed = parseProcedure({ path, text });
    if (parsed.value === undefined) return ['unreadable'];
    const { id } = parsed.value;
    const all = new Map([...this.#parsed, [path, parsed]]);
    const examination = this.#examination(all, text);
    const looks = new Map(this.#looks);
    looks.set(path, examination.lookAt(path));
    const own = this.#graveIn(looks);
    if (own.length > 0) return own;
    for (const [file, { value }] of this.#parsed) {
      if (value === undefined || file === path) continue;
      const reach = examination.linked.outlines.order(value.id);
      if (reach.includes(id)) looks.set(file, examination.lookAt(file));
    }
    return this.#graveIn(looks);
  }

  #examination(parsed: ReadonlyMap<string, Parsed>, changed = ''): Examination {
    const outlines = [...parsed.values()].flatMap(({ value }) => (value ? [outlineOf(value)] : []));
    return new Examination({
      ...this.#material,
      parsed,
      outlines: new Outlines(outlines),
      // Of a changed file its own text; what else a rule asks for has not changed.
      textOf: (file) =>
        parsed.get(file) === this.#parsed.get(file) ? (this.#texts.get(file) ?? '') : changed,
    });
  }

  #graveIn(looks: ReadonlyMap<string, Look>): readonly string[] {
    const { findings } = conclude([...looks.values()], {
      levels: this.linked.manual.settings.rules,
      titleOf: (id) => id,
      today: undefined,
    });
    return graveAmong(findings);
  }
}

function graveAmong(findings: readonly Finding[]): readonly string[] {
  const grave = findings.filter(({ level }) => level !== 'note');
  return [...new Set(grave.map(({ rule }) => rule))];
}
