export { lastRound } from './passes.ts';
export { type Layout, layoutOf, type Position } from './positions.ts';
export { torqueFor } from './preload.ts';
export { nutFactor, type ThreadCondition } from './preload-friction.ts';
export { proofStress, type ReadStrength, type Strength, type StrengthProblem } from './strength.ts';
export { parseStrength } from './strength-of.ts';
export { parseThread } from './thread.ts';
export { nominalDiameter, stressArea } from './thread-area.ts';
export type { InchThread, MetricThread, Thread, ThreadProblem } from './thread-model.ts';
export { looseningOrder, type TighteningOrder, tighteningOrder } from './tightening-order.ts';
export { type Joint, type TorqueBand, torqueBand } from './torque-band.ts';
export { likelySlips, type Slip } from './torque-band-slip.ts';
export { type Implausible, implausibleStage } from './torque-band-verdict.ts';
export { settingShare, type WrenchExtension, wrenchSetting } from './wrench-extension.ts';
export {
  plainLength,
  type TorqueTool,
  type WrenchFault,
  type WrenchInUse,
  wrenchInUse,
} from './wrench-in-use.ts';
