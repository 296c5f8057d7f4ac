import type { Whole } from './share.ts';

/** The files of a manual on which a look at one of its parts depends, beside manual.yaml. */
export class NeededFiles {
  readonly #whole: Whole;
  readonly #idOf: ReadonlyMap<string, string>;
  readonly #fileOf = new Map<string, string>();

  constructor(whole: Whole) {
    this.#whole = whole;
    this.#idOf = new Map(whole.machines.map(({ id, file }) => [file, id]));
    for (const { id, file } of whole.machines)
      if (!this.#fileOf.has(id)) this.#fileOf.set(id, file);
  }

  /** Paths of files, that of the part included; one may be named twice. */
  of(path: string): readonly string[] {
    const { outlines, machines } = this.#whole;
    const outline = outlines.byFile.get(path);
    // Of two machines with one id the first has it: what the second is cannot be seen without.
    if (outline === undefined) return [path, ...this.#machine(this.#idOf.get(path))];
    const led = outlines.order(outline.id).flatMap((id) => outlines.byId.get(id) ?? []);
    return led.flatMap(({ file, machine }) => {
      const named = this.#machine(machine);
      return [file, ...(named.length === 0 ? machines.map((one) => one.file) : named)];
    });
  }

  #machine(id: string | undefined): readonly string[] {
    const file = id === undefined ? undefined : this.#fileOf.get(id);
    return file === undefined ? [] : [file];
  }
}
