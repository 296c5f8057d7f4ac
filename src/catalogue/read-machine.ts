import { itemsSchema, machineSchema } from '../../schemas/catalogue.ts';
import { locator, readYaml, type SourceFact, type TextFile } from '../source/index.ts';
import { checkReferences } from './check-references.ts';
import type { CatalogueFact } from './facts.ts';
import { lostEntries } from './lost-entries.ts';
import type { Catalogue } from './model.ts';
import { readItems } from './read-items.ts';
import type { ItemsContext } from './written-item.ts';

/** Entries, and else whole groups, stand for themselves: a fault in one leaves the others. */
const parts = ['*', '*.*'];

/** For a file without `machine` or `name`, whose entries are good all the same. */
const namelessSchema = machineSchema.partial({ machine: true, name: true });

/** One `machines/<id>.yaml`, with what is found wrong in it. Whatever is wrong, there is a catalogue. */
export function readMachine(
  file: TextFile,
  context: Pick<ItemsContext, 'variants' | 'defaultTorques'>,
): { value: Catalogue; facts: readonly (SourceFact | CatalogueFact)[] } {
  const at = locator(file.path, file.text);
  const yaml = readYaml(at, 0, file.text.length, machineSchema, parts);
  const data = yaml.value ?? readYaml(at, 0, file.text.length, namelessSchema, parts).value;
  const written = { locator: at, placeOf: yaml.placeOf, keyPlaceOf: yaml.keyPlaceOf };
  const items = readItems(data ?? itemsSchema.parse({}), written, {
    ...context,
    prefix: '',
    taken: new Map(),
  });
  const stem = machineFile.exec(file.path)?.[1] ?? '';
  const id = data?.machine ?? stem;
  const lost = lostEntries(yaml.dropped, '');
  const value: Catalogue = {
    id,
    name: data?.name ?? id,
    note: data?.note,
    file: file.path,
    items: items.value,
    faulty: lost.ids,
    isWhole: !yaml.isBroken && !lost.isMore && data !== undefined,
  };
  const facts: (SourceFact | CatalogueFact)[] = [...yaml.facts, ...items.facts];
  if (data?.machine !== undefined && data.machine !== stem) {
    facts.push({
      kind: 'machine-name-differs',
      place: yaml.placeOf('machine'),
      id,
      file: file.path,
    });
  }
  return { value, facts: [...facts, ...checkReferences(value)] };
}

/** Files that describe a machine, by the path in the manual's folder. */
export const machineFile = /^machines\/(?:.*\/)?([^/]+)\.ya?ml$/;
