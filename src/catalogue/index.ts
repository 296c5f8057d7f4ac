export { catalogueFor, itemsOfKind, mayHave } from './catalogue-for.ts';
export { checkReferences } from './check-references.ts';
export type { CatalogueFact } from './facts.ts';
export { glycolShare } from './glycol-share.ts';
export type {
  Aid,
  Catalogue,
  Circuit,
  Connection,
  Consumable,
  Containers,
  Control,
  DefaultTorque,
  Energy,
  Fastener,
  Hazard,
  Item,
  ItemKind,
  Limit,
  ManualModel,
  Part,
  Screw,
  StatefulItem,
  Tool,
  Torque,
} from './model.ts';
export { nameOf, pluralName, pluralOf } from './name-of.ts';
export { namedAsItsFile } from './named-as-its-file.ts';
export { type OwnItems, ownItemParts, readOwnItems } from './own-items.ts';
export { positionsOf } from './pattern.ts';
export { machineFile } from './read-machine.ts';
export {
  type MachineName,
  ManualReader,
  machinesTwice,
  manualFile,
  type ReadManual,
  readManual,
} from './read-manual.ts';
export { type Reference, referencesOf } from './references.ts';
export { isSingleUse } from './single-use.ts';
export { stronglyConnected } from './strongly-connected.ts';
