export type { LinkFact } from './facts.ts';
export { linkManual } from './link-manual.ts';
export type { LinkedManual, LinkedProcedure } from './linked.ts';
export { targetOf } from './paths.ts';
export { actionsIn, allActions, allBlocks, allSteps, blocksIn, within } from './walk.ts';
