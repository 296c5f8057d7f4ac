export type { LinkFact } from './facts.ts';
export { type FluidEvent, fluidEvents } from './fluid-events.ts';
export { expectedReading, limitOf } from './limit-of.ts';
export { linkManual } from './link-manual.ts';
export type { LinkedManual, LinkedProcedure } from './linked.ts';
export { targetOf } from './paths.ts';
export { sectionsFrom } from './sections-from.ts';
export { actionsIn, allActions, allBlocks, allSteps, blocksIn, within } from './walk.ts';
export { wrenchOf } from './wrench-of.ts';
