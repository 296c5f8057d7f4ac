import { readManual } from '../../src/catalogue/index.ts';
import type { ManualFiles } from '../../src/source/index.ts';

const plainManual = 'title: T\n';

/** A manual read from the text of its one machine, and that of `manual.yaml`. */
export function manualOf(machine: string, manual = plainManual) {
  return readManual(filesOf({ 'manual.yaml': manual, 'machines/m.yaml': machine }));
}

/** The same from the groups of entries alone. */
export function catalogueOf(entries: string, manual = plainManual) {
  const { value, facts } = manualOf(`machine: m\nname: M\n${entries}`, manual);
  const catalogue = value.machines.get('m');
  if (catalogue === undefined) throw new Error('the machine is lost');
  const item = (id: string) => {
    const found = catalogue.items.get(id);
    if (found === undefined) throw new Error(`no entry ${id}`);
    return found;
  };
  return { manual: value, catalogue, item, facts };
}

export function filesOf(texts: Readonly<Record<string, string>>): ManualFiles {
  return {
    texts: Object.entries(texts).map(([path, text]) => ({ path, text })),
    unreadable: [],
    others: [],
  };
}
