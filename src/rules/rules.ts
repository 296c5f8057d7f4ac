import { rule as aidLeftIn } from './balance/aid-left-in.ts';
import { rule as controlAway } from './balance/control-away.ts';
import { rule as countMismatch } from './balance/count-mismatch.ts';
import { rule as inWithoutOut } from './balance/in-without-out.ts';
import { rule as leftAside } from './balance/left-aside.ts';
import { rule as leftCapped } from './balance/left-capped.ts';
import { rule as leftDrained } from './balance/left-drained.ts';
import { rule as leftIsolated } from './balance/left-isolated.ts';
import { rule as leftLoose } from './balance/left-loose.ts';
import { rule as leftOpen } from './balance/left-open.ts';
import { rule as leftOut } from './balance/left-out.ts';
import { rule as leftUncapped } from './balance/left-uncapped.ts';
import { rule as notBled } from './balance/not-bled.ts';
import { rule as notRenewed } from './balance/not-renewed.ts';
import { rule as oldPartBack } from './balance/old-part-back.ts';
import { rule as oldPartUnsaid } from './balance/old-part-unsaid.ts';
import { rule as outTwice } from './balance/out-twice.ts';
import { rule as promiseBroken } from './balance/promise-broken.ts';
import { rule as startNotMet } from './balance/start-not-met.ts';
import { rule as stateUnfit } from './balance/state-unfit.ts';
import { rule as attributeWrong } from './form/attribute-wrong.ts';
import { rule as colonMissing } from './form/colon-missing.ts';
import { rule as conditionWrong } from './form/condition-wrong.ts';
import { rule as directiveMisplaced } from './form/directive-misplaced.ts';
import { rule as directiveUnknown } from './form/directive-unknown.ts';
import { rule as emptyManual } from './form/empty-manual.ts';
import { rule as fileUnreadable } from './form/file-unreadable.ts';
import { rule as frontMatterMissing } from './form/front-matter-missing.ts';
import { rule as rawHtml } from './form/raw-html.ts';
import { rule as reverseAtUnused } from './form/reverse-at-unused.ts';
import { rule as reverseEmpty } from './form/reverse-empty.ts';
import { rule as reverseOfLater } from './form/reverse-of-later.ts';
import { rule as sectionTwice } from './form/section-twice.ts';
import { rule as tooDeep } from './form/too-deep.ts';
import { rule as tooLarge } from './form/too-large.ts';
import { rule as variantsWrong } from './form/variants-wrong.ts';
import { rule as waiverExpired } from './form/waiver-expired.ts';
import { rule as waiverReason } from './form/waiver-reason.ts';
import { rule as waiverUnknownRule } from './form/waiver-unknown-rule.ts';
import { rule as waiverUnused } from './form/waiver-unused.ts';
import { rule as yamlBroken } from './form/yaml-broken.ts';
import { rule as yamlShape } from './form/yaml-shape.ts';
import { rule as brokenLink } from './links/broken-link.ts';
import { rule as calloutTwice } from './links/callout-twice.ts';
import { rule as duplicateId } from './links/duplicate-id.ts';
import { rule as figureBroken } from './links/figure-broken.ts';
import { rule as figureMissing } from './links/figure-missing.ts';
import { rule as figureTooLarge } from './links/figure-too-large.ts';
import { rule as figureUnsafe } from './links/figure-unsafe.ts';
import { rule as itemAbsent } from './links/item-absent.ts';
import { rule as itemUnfit } from './links/item-unfit.ts';
import { rule as linkOutside } from './links/link-outside.ts';
import { rule as machineUnsaid } from './links/machine-unsaid.ts';
import { rule as orphanProcedure } from './links/orphan-procedure.ts';
import { rule as textAlternativeMissing } from './links/text-alternative-missing.ts';
import { rule as unknownItem } from './links/unknown-item.ts';
import { rule as unknownMachine } from './links/unknown-machine.ts';
import { rule as unknownProcedure } from './links/unknown-procedure.ts';
import { rule as unknownRevision } from './links/unknown-revision.ts';
import { rule as unknownRule } from './links/unknown-rule.ts';
import { rule as unknownSection } from './links/unknown-section.ts';
import { rule as unknownState } from './links/unknown-state.ts';
import { rule as unknownStep } from './links/unknown-step.ts';
import { rule as unknownVerb } from './links/unknown-verb.ts';
import { rule as unusedEntry } from './links/unused-entry.ts';
import { rule as aidInWay } from './order/aid-in-way.ts';
import { rule as blocked } from './order/blocked.ts';
import { rule as closedOver } from './order/closed-over.ts';
import { rule as cycle } from './order/cycle.ts';
import { rule as drainShut } from './order/drain-shut.ts';
import { rule as fillOpen } from './order/fill-open.ts';
import { rule as fillShut } from './order/fill-shut.ts';
import { rule as needsLater } from './order/needs-later.ts';
import { rule as nothingThere } from './order/nothing-there.ts';
import { rule as stillHeld } from './order/still-held.ts';
import { rule as tooManyUndone } from './order/too-many-undone.ts';
import { rule as underPressure } from './order/under-pressure.ts';
import type { Rule } from './rule.ts';
import { rule as energyLive } from './safety/energy-live.ts';
import { rule as hazardIncomplete } from './safety/hazard-incomplete.ts';
import { rule as hazardLate } from './safety/hazard-late.ts';
import { rule as hazardMissing } from './safety/hazard-missing.ts';
import { rule as hazardUnmet } from './safety/hazard-unmet.ts';
import { rule as leakUnchecked } from './safety/leak-unchecked.ts';
import { rule as signalWord } from './safety/signal-word.ts';
import { rule as tooHeavy } from './safety/too-heavy.ts';
import { rule as baseUnfit } from './values/base-unfit.ts';
import { rule as capacityZero } from './values/capacity-zero.ts';
import { rule as classUnknown } from './values/class-unknown.ts';
import { rule as containerWrong } from './values/container-wrong.ts';
import { rule as fillOver } from './values/fill-over.ts';
import { rule as fillShort } from './values/fill-short.ts';
import { rule as fluidMixed } from './values/fluid-mixed.ts';
import { rule as limitDisagrees } from './values/limit-disagrees.ts';
import { rule as limitUnsaid } from './values/limit-unsaid.ts';
import { rule as mixOver } from './values/mix-over.ts';
import { rule as neverRechecked } from './values/never-rechecked.ts';
import { rule as neverTorqued } from './values/never-torqued.ts';
import { rule as pairDisagrees } from './values/pair-disagrees.ts';
import { rule as patternCount } from './values/pattern-count.ts';
import { rule as patternOverlap } from './values/pattern-overlap.ts';
import { rule as stagesFall } from './values/stages-fall.ts';
import { rule as threadUnknown } from './values/thread-unknown.ts';
import { rule as toolLengthWrong } from './values/tool-length-wrong.ts';
import { rule as torqueDisagrees } from './values/torque-disagrees.ts';
import { rule as torqueImplausible } from './values/torque-implausible.ts';
import { rule as torqueLow } from './values/torque-low.ts';
import { rule as torqueMissing } from './values/torque-missing.ts';
import { rule as unitKind } from './values/unit-kind.ts';
import { rule as unitSpelling } from './values/unit-spelling.ts';
import { rule as unitUnknown } from './values/unit-unknown.ts';
import { rule as unitsMixed } from './values/units-mixed.ts';
import { rule as wrenchSettingUnknown } from './values/wrench-setting-unknown.ts';
import { rule as actionInHazard } from './words/action-in-hazard.ts';
import { rule as countInWords } from './words/count-in-words.ts';
import { rule as jumpInWords } from './words/jump-in-words.ts';
import { rule as newInWords } from './words/new-in-words.ts';
import { rule as notImperative } from './words/not-imperative.ts';
import { rule as reverseAsks } from './words/reverse-asks.ts';
import { rule as reverseOrder } from './words/reverse-order.ts';
import { rule as sentenceTooLong } from './words/sentence-too-long.ts';
import { rule as severalActions } from './words/several-actions.ts';
import { rule as untrackedAction } from './words/untracked-action.ts';
import { rule as vagueTorque } from './words/vague-torque.ts';
import { rule as verbDiffers } from './words/verb-differs.ts';

/** All rules, by family. */
export const rules: readonly Rule[] = [
  attributeWrong,
  colonMissing,
  conditionWrong,
  directiveMisplaced,
  directiveUnknown,
  emptyManual,
  fileUnreadable,
  frontMatterMissing,
  rawHtml,
  reverseAtUnused,
  reverseEmpty,
  reverseOfLater,
  sectionTwice,
  tooDeep,
  tooLarge,
  variantsWrong,
  waiverExpired,
  waiverReason,
  waiverUnknownRule,
  waiverUnused,
  yamlBroken,
  yamlShape,
  brokenLink,
  duplicateId,
  calloutTwice,
  figureBroken,
  figureMissing,
  figureTooLarge,
  figureUnsafe,
  itemAbsent,
  itemUnfit,
  linkOutside,
  machineUnsaid,
  orphanProcedure,
  textAlternativeMissing,
  unknownItem,
  unknownMachine,
  unknownProcedure,
  unknownRevision,
  unknownRule,
  unknownSection,
  unknownState,
  unknownStep,
  unknownVerb,
  unusedEntry,
  aidLeftIn,
  controlAway,
  countMismatch,
  inWithoutOut,
  leftAside,
  leftCapped,
  leftDrained,
  leftIsolated,
  leftLoose,
  leftOpen,
  leftOut,
  leftUncapped,
  notBled,
  notRenewed,
  oldPartBack,
  oldPartUnsaid,
  outTwice,
  promiseBroken,
  startNotMet,
  stateUnfit,
  aidInWay,
  blocked,
  closedOver,
  cycle,
  drainShut,
  fillOpen,
  fillShut,
  needsLater,
  nothingThere,
  stillHeld,
  tooManyUndone,
  underPressure,
  energyLive,
  hazardIncomplete,
  hazardLate,
  hazardMissing,
  hazardUnmet,
  leakUnchecked,
  signalWord,
  tooHeavy,
  containerWrong,
  limitDisagrees,
  limitUnsaid,
  baseUnfit,
  capacityZero,
  fillOver,
  fillShort,
  fluidMixed,
  mixOver,
  neverRechecked,
  neverTorqued,
  pairDisagrees,
  patternCount,
  patternOverlap,
  stagesFall,
  toolLengthWrong,
  classUnknown,
  threadUnknown,
  torqueDisagrees,
  torqueImplausible,
  torqueLow,
  torqueMissing,
  unitKind,
  unitSpelling,
  unitUnknown,
  unitsMixed,
  wrenchSettingUnknown,
  actionInHazard,
  countInWords,
  jumpInWords,
  newInWords,
  notImperative,
  reverseOrder,
  reverseAsks,
  sentenceTooLong,
  severalActions,
  untrackedAction,
  vagueTorque,
  verbDiffers,
];
