import type { Risk } from '../../schemas/redline.ts';
import type { Fact } from './fact.ts';

/** A member of an entry: in any case, or only where something is taken from it. */
interface FieldRisk {
  readonly changed: Risk;
  readonly lost: Risk;
}

const alike = (risk: Risk): FieldRisk => ({ changed: risk, lost: risk });

/** What the check keeps by one of these members is kept less when it says less. */
const order: FieldRisk = { changed: 'order', lost: 'order' };

const risks: Readonly<Record<string, FieldRisk>> = {
  kind: alike('order'),
  hazards: { changed: 'protection', lost: 'protection' },
  'raised-by': { changed: 'protection', lost: 'protection' },
  first: { changed: 'protection', lost: 'protection' },
  'isolate-before': { changed: 'protection', lost: 'protection' },
  pressure: { changed: 'work', lost: 'protection' },
  blocks: order,
  holds: order,
  behind: order,
  'lets-go-when': order,
  'most-undone': order,
  in: order,
  on: order,
  circuit: order,
  drain: order,
  fill: order,
  positions: order,
  home: order,
  each: order,
  type: order,
  'cap-when-open': { changed: 'work', lost: 'proof' },
  'leak-check': { changed: 'work', lost: 'proof' },
  'check-again': { changed: 'work', lost: 'proof' },
  'single-use': { changed: 'work', lost: 'joint' },
  'renew-with': alike('joint'),
  thread: alike('joint'),
  class: alike('joint'),
  grade: alike('joint'),
  tightness: alike('joint'),
  stack: alike('joint'),
  pattern: alike('joint'),
  facing: alike('joint'),
  coat: alike('joint'),
  'part-number': alike('work'),
  lifts: { changed: 'work', lost: 'protection' },
  length: alike('joint'),
  extension: alike('joint'),
  size: alike('work'),
  specification: alike('fluid'),
  base: alike('fluid'),
  'never-with': { changed: 'fluid', lost: 'fluid' },
  bleed: { changed: 'work', lost: 'put-back' },
  loss: alike('record'),
  dispose: { changed: 'work', lost: 'protection' },
  containers: alike('record'),
  name: alike('words'),
  plural: alike('words'),
  note: alike('words'),
  'also-called': alike('words'),
  figure: alike('record'),
};

/** In which class a change to a member of an entry is. */
export function fieldRisk({ field = '', before, after }: Fact): Risk {
  const risk = Object.hasOwn(risks, field) ? risks[field] : undefined;
  if (risk === undefined) return 'work';
  return before !== undefined && after === undefined ? risk.lost : risk.changed;
}
