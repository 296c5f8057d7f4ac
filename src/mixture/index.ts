export { type Correction, correctionOf, replacement } from './correction.ts';
export {
  coverOf,
  type FreezingTable,
  freezingPoint,
  freezingTables,
  type GlycolBase,
} from './freezing.ts';
export { type Flow, followLevel, type LevelFault, type LevelStory } from './level.ts';
