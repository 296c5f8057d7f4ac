import type { DefaultTorque, Item, ManualModel, Torque } from '../catalogue/index.ts';
import { torqueShifts } from './torque-shifts.ts';

/** The rule by thread and class that gives an entry its torque; undefined where it has one of its own. */
export function ruleBehind(item: Item, { defaultTorques }: ManualModel): DefaultTorque | undefined {
  if (item.kind !== 'fastener' || item.torque?.byDefault !== true) return undefined;
  return defaultTorques.find(({ torque }) => torque === item.torque);
}

/** The same for rules of the same screws: "M8, class 8.8". */
export function ruleName({ thread, class: strength, grade }: DefaultTorque): string {
  if (strength !== undefined) return `${thread}, class ${strength}`;
  return grade === undefined ? thread : `${thread}, grade ${grade}`;
}

/** The first rule of each name. */
export function rulesOf({ defaultTorques }: ManualModel): ReadonlyMap<string, DefaultTorque> {
  return new Map(defaultTorques.toReversed().map((rule) => [ruleName(rule), rule]));
}

/** True where one rule gives both entries their torque, and its torque changed: that is told at the rule. */
export function toldByRule(
  before: ManualModel,
  after: ManualModel,
): (one: Item, other: Item) => boolean {
  const torques = (manual: ManualModel): ReadonlyMap<string, Torque> =>
    new Map([...rulesOf(manual)].map(([name, { torque }]) => [name, torque]));
  const [old, now] = [torques(before), torques(after)];
  return (one, other) => {
    const [a, b] = [ruleBehind(one, before), ruleBehind(other, after)];
    if (a === undefined || b === undefined || ruleName(a) !== ruleName(b)) return false;
    return torqueShifts(old.get(ruleName(a)), now.get(ruleName(b))).length > 0;
  };
}
