import type { ItemsInput } from '../../schemas/catalogue.ts';
import type { Locator, Yaml } from '../source/index.ts';
import { catalogueFor } from './catalogue-for.ts';
import { checkReferences } from './check-references.ts';
import type { CatalogueFact } from './facts.ts';
import { lostEntries } from './lost-entries.ts';
import type { Catalogue, ManualModel } from './model.ts';
import { readItems } from './read-items.ts';

/** For `readYaml` of a front matter: a fault in one of its entries leaves the others and the rest. */
export const ownItemParts = ['items.*', 'items.*.*'];

/** The `items:` of a procedure's front matter, as `readYaml` gives it. */
export interface OwnItems {
  readonly procedure: string;
  readonly title: string;
  readonly locator: Locator;
  readonly items: ItemsInput;
  readonly yaml: Pick<Yaml<unknown>, 'placeOf' | 'keyPlaceOf' | 'dropped' | 'isBroken'>;
}

/** Entries of one procedure, linked to those of its machine. Join the two by `catalogueFor`. */
export function readOwnItems(
  own: OwnItems,
  manual: ManualModel,
  machine: Catalogue | undefined,
): { value: Catalogue; facts: readonly CatalogueFact[] } {
  const { yaml, locator } = own;
  const written = { locator, placeOf: yaml.placeOf, keyPlaceOf: yaml.keyPlaceOf };
  const { value: items, facts } = readItems(own.items, written, {
    variants: manual,
    defaultTorques: manual.defaultTorques,
    prefix: 'items',
    taken: machine?.items ?? new Map(),
  });
  const lost = lostEntries(yaml.dropped, 'items.');
  const value: Catalogue = {
    id: own.procedure,
    name: own.title,
    note: undefined,
    file: locator.file,
    items,
    faulty: lost.ids,
    isWhole: !yaml.isBroken && !lost.isMore,
  };
  return { value, facts: [...facts, ...checkReferences(catalogueFor(machine, value), items)] };
}
