export { type ActionWords, actionWords } from './action-words.ts';
export { stagePieces, stageTexts, writtenText } from './amounts.ts';
export { conditionWords, onlyWords } from './condition-words.ts';
export { isContract } from './contract.ts';
export { countOf } from './count-meant.ts';
export { type FluidFact, shownFluid } from './fluid-facts.ts';
export type { FoundItems } from './found-items.ts';
export { actionsOf, type Gathering, gatherer } from './gather.ts';
export {
  bySeverity,
  type HazardWords,
  hazardsAtAGlance,
  hazardWords,
} from './hazards-at-a-glance.ts';
export { idWords } from './id-words.ts';
export { instancesMeant, instancesOf, instanceWords, piecesAtEach } from './instances.ts';
export { itemName, piecesOf, strengthOf } from './item-name.ts';
export { handledCircuits, isTorqued, type Torqued, torquedItems } from './items-with-figures.ts';
export { type MixPart, mixVolumes } from './mix-volumes.ts';
export { allItems, machineOf, type Owned, type Owner, ownerOf } from './owner.ts';
export { partPulls, partsToPull } from './parts-to-pull.ts';
export { people } from './people.ts';
export { type Performs, performsOf } from './performs.ts';
export { consumablesToPull, type Pull, pullsOf, toolsToPull } from './pull-lists.ts';
export { type StateWords, stateWords } from './state-words.ts';
export {
  type Pieces,
  type Reading,
  type StepFacts,
  stepFacts,
  stepInstances,
  type WorkFacts,
  workFacts,
} from './step-facts.ts';
export { type Numbered, type StepNumbers, stepNumbers } from './step-numbers.ts';
export { documentNumber, type System, systemsOf } from './systems.ts';
export { shownTorque, type TorqueFact } from './torque-facts.ts';
export { boundValues, valuesInText } from './values-in-text.ts';
export { type Use, whereUsed } from './where-used.ts';
export { timeText, type WorkTime, workTime } from './work-time.ts';
