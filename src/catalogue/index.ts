export { catalogueFor, itemsOfKind, mayHave } from './catalogue-for.ts';
export { checkReferences } from './check-references.ts';
export type { CatalogueFact } from './facts.ts';
export type {
  Aid,
  Catalogue,
  Circuit,
  Connection,
  Consumable,
  Control,
  DefaultTorque,
  Energy,
  Fastener,
  Hazard,
  Item,
  ItemKind,
  ManualModel,
  Part,
  StatefulItem,
  Tool,
  Torque,
} from './model.ts';
export { nameOf, pluralName, pluralOf } from './name-of.ts';
export { type OwnItems, ownItemParts, readOwnItems } from './own-items.ts';
export { positionsOf } from './pattern.ts';
export { readManual } from './read-manual.ts';
export { type Reference, referencesOf } from './references.ts';
