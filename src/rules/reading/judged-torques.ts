import type { Place, Related } from '../../../schemas/finding.ts';
import type { Fastener, Screw, Torque } from '../../catalogue/index.ts';
import {
  type Implausible,
  implausibleStage,
  type Thread,
  type TorqueBand,
  torqueBand,
} from '../../joint/index.ts';
import type { Examined } from '../rule.ts';
import { related } from '../telling/related.ts';

/** A torque of the catalogue that its thread and strength make implausible. */
export interface JudgedTorque {
  readonly place: Place;
  /** Undefined where it is a default torque of the manual. */
  readonly item: Fastener | undefined;
  /** The thread as it is written. */
  readonly written: string;
  readonly thread: Thread;
  readonly strength: Screw['strength'];
  readonly torque: Torque;
  readonly band: TorqueBand;
  readonly found: Implausible;
  /** Where thread, class and grade are written. */
  readonly related: readonly Related[];
}

/**
 * The torques of fasteners and the default torques of the manual that are too high or too low. A default torque that
 * fits its own thread and class, but not those of a fastener, is told at that fastener.
 */
export function judgedTorques(examined: Examined): JudgedTorque[] {
  const rules = examined.linked.manual.defaultTorques;
  const ofRules = rules.flatMap((rule) => judged({ ...rule, item: undefined }) ?? []);
  const faulty = new Set(ofRules.map(({ torque }) => torque));
  const ofItems = examined.entries.flatMap((item) => {
    const torque = item.kind === 'fastener' ? item.torque : undefined;
    if (item.kind !== 'fastener' || torque === undefined || faulty.has(torque)) return [];
    return judged({ ...item, torque, item }) ?? [];
  });
  return examined.hasSettings ? [...ofRules, ...ofItems] : ofItems;
}

interface Torqued {
  readonly item: Fastener | undefined;
  readonly thread?: string | undefined;
  readonly class?: string | undefined;
  readonly grade?: string | undefined;
  readonly screw: Screw;
  readonly torque: Torque;
  readonly placeOf: (member: string) => Place;
}

function judged(one: Torqued): JudgedTorque | undefined {
  const { item, screw, torque, placeOf } = one;
  const { thread, strength } = screw;
  if (thread === undefined || one.thread === undefined) return undefined;
  const band = torqueBand({ thread, strength, threads: torque.threads });
  const found = implausibleStage(torque.spec, band);
  if (found === undefined) return undefined;
  const isFromRule = torque.byDefault && item !== undefined;
  const members = (['thread', 'class', 'grade'] as const).filter(
    (member) => one[member] !== undefined && !(isFromRule && member === 'thread'),
  );
  return {
    place: isFromRule ? placeOf('thread') : stagePlace(torque, found.stage, placeOf),
    item,
    written: one.thread,
    thread,
    strength,
    torque,
    band,
    found,
    related: [
      ...members.map((member) => related(placeOf(member), `the ${member} is said here`)),
      ...(isFromRule ? [related(torque.place, 'the default torque of the manual')] : []),
    ],
  };
}

/** The stage alone, where the torque is a list. */
export function stagePlace(
  torque: Torque,
  stage: number,
  placeOf: (member: string) => Place,
): Place {
  // A path that there is not gives the place of its parent, which begins before.
  return [`torque.${stage}`, `torque.stages.${stage}`]
    .map(placeOf)
    .reduce((best, one) => (one.start.offset > best.start.offset ? one : best), torque.place);
}
