import { printAsWritten, type UnitPolicy } from '../../quantity/index.ts';
import type { JudgedTorque } from '../reading/judged-torques.ts';
import type { Draft } from '../rule.ts';
import { code, sentence } from '../wording/lists.ts';
import { the, thing } from '../wording/thing.ts';
import { numbersOf, slipWords, workingOf } from '../wording/torque-working.ts';
import { without } from './related.ts';

/** A finding on a torque of the catalogue: what it does, the slip that may be behind it, and the working. */
export function torqueDraft(
  rule: string,
  one: JudgedTorque,
  policy: UnitPolicy,
  share: string,
): Draft {
  const { place, item, found, band, strength, torque } = one;
  const figure = torque.written[found.stage] ?? printAsWritten(found.torque);
  const kind = strength === undefined ? one.written : `${one.written} ${strength.name}`;
  const whose = item === undefined || item.count === 1 ? 'its' : 'their';
  const load = strength === undefined ? 'the proof load even of class 12.9' : `${whose} proof load`;
  const loaded = item === undefined ? kind : `${the(thing(item.id, item))} (${kind})`;
  return {
    place,
    item: item?.id,
    message: `${figure} would load ${loaded} to ${share} ${load}`,
    data: {
      written: figure,
      stage: found.stage + 1,
      thread: one.written,
      strength: strength?.name ?? null,
      threads: torque.threads ?? null,
      share: Number(found.share.toPrecision(4)),
      byDefault: torque.byDefault,
      ...numbersOf(band),
    },
    related: without(place, one.related),
    help: [
      ...slipWords(one, policy).map(sentence),
      workingOf(one, policy),
      whatToDo(rule, one),
    ].join(' '),
  };
}

/** The figure is a rule of thumb: the maker knows the joint. */
function whatToDo(rule: string, { item }: JudgedTorque): string {
  const start = 'Look the value up and correct it. The maker’s value rules';
  if (item === undefined) return `${start}: where it is theirs, give it to those fasteners alone.`;
  const waiver = code(`:::waive{rule=${rule} item=${item.id}}`);
  return `${start}: where it is theirs, say so with ${waiver} in a procedure.`;
}
