import { createSpace, parseCondition } from '../applicability/index.ts';
import type { Catalogue } from '../catalogue/index.ts';
import { type Ledger, openLedger } from '../ledger/index.ts';
import type { LinkedManual } from '../link/index.ts';
import type { Inspection } from '../report/index.ts';
import { isManualText, type ManualFiles } from '../source/index.ts';
import { type Procedure, parseProcedure } from '../syntax/index.ts';

/** A manual and its ledger, to ask for states. */
export interface Asking {
  readonly linked: LinkedManual;
  readonly ledger: Ledger;
}

/** Questions to one space of variants. */
const askedOfOne = 100;

const nothing: ManualFiles = { texts: [], unreadable: [], others: [] };

/**
 * One manual under the writer's hands: what its folder holds, with the texts that are open in the editor laid
 * over it. What it answers always fits the texts as they are now; it checks again only where one has changed.
 */
export class Desk {
  readonly #check: (files: ManualFiles) => Inspection;
  #folder: ManualFiles = nothing;
  readonly #open = new Map<string, string>();
  #files: ManualFiles | undefined;
  #texts: ReadonlyMap<string, string> | undefined;
  #inspection: Inspection | undefined;
  #asking: Asking | undefined;
  #asked = 0;
  readonly #whole = new Map<string, Catalogue>();
  readonly #parsed = new Map<string, { readonly text: string; readonly value?: Procedure }>();

  constructor(check: (files: ManualFiles) => Inspection) {
    this.#check = check;
  }

  /** What the folder holds by now. */
  put(folder: ManualFiles): void {
    this.#folder = folder;
    this.#forget();
  }

  /** The text of an open file, whatever the folder has. Paths are those of the manual. */
  open(path: string, text: string): void {
    if (this.#open.get(path) === text) return;
    this.#open.set(path, text);
    if (isManualText(path)) this.#forget();
  }

  close(path: string): void {
    if (this.#open.delete(path)) this.#forget();
  }

  isOpen(path: string): boolean {
    return this.#open.has(path);
  }

  get openFiles(): readonly string[] {
    return [...this.#open.keys()];
  }

  /** Whether the folder has a text of this path, so that a change of an open one on disk is no news. */
  hasText(path: string): boolean {
    return this.#folder.texts.some((one) => one.path === path);
  }

  get files(): ManualFiles {
    this.#files ??= this.#laidOver();
    return this.#files;
  }

  get inspection(): Inspection {
    if (this.#inspection === undefined) {
      this.#inspection = this.#check(this.files);
      for (const machine of this.#inspection.linked.manual.machines.values())
        if (machine.isWhole) this.#whole.set(machine.id, machine);
    }
    return this.#inspection;
  }

  /** What the check would say of other texts. */
  tryOut(files: ManualFiles): Inspection {
    return this.#check(files);
  }

  /** A machine's entries; while its file breaks off being YAML, those that it had before. */
  entriesOf(machine: Catalogue): Catalogue['items'] {
    const before = machine.isWhole ? undefined : this.#whole.get(machine.id);
    return before === undefined ? machine.items : new Map([...before.items, ...machine.items]);
  }

  /**
   * The manual and its ledger, to ask for states. Each run leaves what the technician may find behind in the
   * space of variants, so that questions have a space of their own, and now and then a new one.
   */
  get forAsking(): Asking {
    if (this.#asking === undefined || this.#asked >= askedOfOne) {
      const { linked } = this.inspection;
      const { settings, space: used } = linked.manual;
      const never = settings.never.flatMap((one) => parseCondition(one).value ?? []);
      const { space } = createSpace(used.attributes, never);
      const own = { ...linked, manual: { ...linked.manual, space } };
      this.#asking = { linked: own, ledger: openLedger(own) };
      this.#asked = 0;
    }
    this.#asked += 1;
    return this.#asking;
  }

  textOf(path: string): string | undefined {
    this.#texts ??= new Map(this.files.texts.map((one) => [one.path, one.text]));
    return this.#texts.get(path);
  }

  /** A procedure as its author wrote it, its reverses not written out; undefined where its id cannot be read. */
  written(path: string): Procedure | undefined {
    const text = path.endsWith('.md') ? this.textOf(path) : undefined;
    if (text === undefined) return undefined;
    const { outlines, procedures } = this.inspection.linked;
    const read = procedures.get(outlines.byFile.get(path)?.id ?? '')?.procedure;
    if (read?.file === path && !text.includes('reverse')) return read;
    const known = this.#parsed.get(path);
    if (known?.text === text) return known.value;
    const { value } = parseProcedure({ path, text });
    this.#parsed.set(path, { text, ...(value !== undefined && { value }) });
    return value;
  }

  #forget(): void {
    this.#files = undefined;
    this.#texts = undefined;
    this.#inspection = undefined;
    this.#asking = undefined;
  }

  #laidOver(): ManualFiles {
    const open = new Map([...this.#open].filter(([path]) => isManualText(path)));
    const texts = this.#folder.texts.filter(({ path }) => !open.has(path));
    return {
      ...this.#folder,
      texts: [...texts, ...[...open].map(([path, text]) => ({ path, text }))],
      unreadable: this.#folder.unreadable.filter(({ path }) => !open.has(path)),
    };
  }
}
