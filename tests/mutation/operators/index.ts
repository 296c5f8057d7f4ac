import type { Operator } from '../operator.ts';
import { changeCount } from './change-count.ts';
import { deleteAction } from './delete-action.ts';
import { dropPerform } from './drop-perform.ts';
import { duplicateRemoval } from './duplicate-removal.ts';
import { putHazardBehind, takeHazardAway } from './hazard-panel.ts';
import { narrowWhen } from './narrow-when.ts';
import { alterTorque, changeUnit, stateOtherUnit, stateTenthMore } from './stated-value.ts';
import { swapSteps } from './swap-steps.ts';

export { stateAsItIs } from './stated-value.ts';

/** All faults, in the order of the table. */
export const operators: readonly Operator[] = [
  deleteAction('delete install, return or connect', ['install', 'return', 'connect']),
  deleteAction('delete replace', ['replace']),
  deleteAction('delete fill', ['fill']),
  deleteAction('delete bleed', ['bleed']),
  deleteAction('delete torque or tighten', ['torque', 'tighten']),
  deleteAction('delete uncap', ['uncap']),
  deleteAction('delete restore', ['restore']),
  deleteAction('delete withdraw', ['withdraw']),
  deleteAction('delete remove or set-aside', ['remove', 'set-aside']),
  deleteAction('delete disconnect or cap', ['disconnect', 'cap']),
  deleteAction('delete drain or relieve', ['drain', 'relieve']),
  deleteAction('delete isolate', ['isolate']),
  deleteAction('delete fit', ['fit']),
  deleteAction('delete loosen', ['loosen']),
  deleteAction('delete set', ['set']),
  deleteAction('delete discard', ['discard']),
  changeCount,
  swapSteps,
  duplicateRemoval,
  narrowWhen,
  dropPerform,
  takeHazardAway,
  putHazardBehind,
  changeUnit,
  stateOtherUnit,
  stateTenthMore,
  alterTorque,
];
