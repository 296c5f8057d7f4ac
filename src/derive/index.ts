export { type ActionWords, actionWords } from './action-words.ts';
export { isAimed } from './aimed-text.ts';
export { stagePieces, stageTexts, writtenText } from './amounts.ts';
export { attributeName, conditionWords, onlyWords } from './condition-words.ts';
export { isContract } from './contract.ts';
export { countOf } from './count-meant.ts';
export { type Duration, minutesText } from './duration.ts';
export { type FluidFact, shownFluid } from './fluid-facts.ts';
export type { FoundItems } from './found-items.ts';
export { type FreezingWords, freezingWords } from './freezing-words.ts';
export { actionsOf, type Gathering, gatherer, machinesOf } from './gather.ts';
export { hazardKey, hazardRegister, type RegisteredHazard } from './hazard-register.ts';
export {
  bySeverity,
  type HazardWords,
  hazardsAtAGlance,
  hazardWords,
  type MetHazard,
} from './hazards-at-a-glance.ts';
export { idWords } from './id-words.ts';
export { instancesMeant, instancesOf, instanceWords, piecesAtEach } from './instances.ts';
export { itemName, piecesOf, strengthOf } from './item-name.ts';
export { handledCircuits, isTorqued, type Torqued, torquedItems } from './items-with-figures.ts';
export type { LoosenedFact } from './loosened.ts';
export { machineWords } from './machine-words.ts';
export { machinesMeant } from './machines-meant.ts';
export { type MixCorrection, mixCorrections } from './mix-corrections.ts';
export { type MixPart, mixVolumes } from './mix-volumes.ts';
export { allItems, machineOf, type Owned, type Owner, ownerOf } from './owner.ts';
export { patternMeant } from './pattern-meant.ts';
export { type Crew, type Crewed, crew, type WorkPlace } from './people.ts';
export { type Performs, performsOf } from './performs.ts';
export { placingOn } from './placing.ts';
export { Presence } from './presence.ts';
export type { PullCase } from './pull-case.ts';
export { type PullKind, type PullLine, pullGroups } from './pull-line.ts';
export {
  type PullList,
  PullLister,
  type PullListResult,
  type PullProblem,
  pullList,
} from './pull-lists.ts';
export { removalTies, type Tie, type TieKind } from './removal-ties.ts';
export { type Job, type MustFollow, type Schedule, schedule } from './schedule.ts';
export { type Sentence, sentencesOf } from './sentences.ts';
export { setCondition } from './set-condition.ts';
export { type StateWords, stateWords } from './state-words.ts';
export {
  type Asked,
  type Pieces,
  type Reading,
  type StepFacts,
  stepFacts,
  stepInstances,
  type WorkFacts,
  workFacts,
} from './step-facts.ts';
export { type Numbered, type PlacedJob, type StepNumbers, stepNumbers } from './step-numbers.ts';
export { type StepRun, stepRuns } from './step-runs.ts';
export { documentNumber, type System, systemsOf } from './systems.ts';
export { type TiedGroup, tiedGroups } from './tied-groups.ts';
export { shownTorque, type TorqueFact } from './torque-facts.ts';
export { boundValues, valuesInText } from './values-in-text.ts';
export { type Waste, wasteOf } from './waste.ts';
export { type Use, whereUsed } from './where-used.ts';
export { type WorkTime, workTimes } from './work-time.ts';
export { type WrenchFact, wrenchSettings } from './wrench-setting.ts';
