export { compareText } from './compare-text.ts';
export type { SourceFact } from './facts.ts';
export {
  isProcedureFile,
  type ManualFiles,
  type PictureFile,
  type PictureSize,
  type TextFile,
  type UnreadableFile,
} from './files.ts';
export { jsonIn } from './json-in.ts';
export { isManualText } from './manual-text.ts';
export { nearest, slipsBetween } from './near.ts';
export { comparePlaces, type Locator, locator, placeOf } from './place.ts';
export { placeWithin } from './place-within.ts';
export { readYaml, type Yaml } from './yaml.ts';
export { expectedOf, oneOf } from './yaml-words.ts';
