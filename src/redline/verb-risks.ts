import { type Verb, verbSchema } from '../../schemas/directives.ts';
import type { Risk } from '../../schemas/redline.ts';
import { rankOf } from './risks.ts';

/** What is lost where an action is no longer done. */
const gone: Readonly<Record<Verb | 'hazard' | 'perform' | 'reverse', Risk>> = {
  isolate: 'protection',
  relieve: 'protection',
  fit: 'protection',
  hazard: 'protection',
  cap: 'put-back',
  install: 'put-back',
  replace: 'put-back',
  tighten: 'put-back',
  torque: 'put-back',
  connect: 'put-back',
  uncap: 'put-back',
  return: 'put-back',
  fill: 'put-back',
  bleed: 'put-back',
  restore: 'put-back',
  withdraw: 'put-back',
  set: 'put-back',
  apply: 'put-back',
  perform: 'put-back',
  reverse: 'put-back',
  check: 'proof',
  measure: 'proof',
  drain: 'work',
  discard: 'work',
  remove: 'work',
  loosen: 'work',
  disconnect: 'work',
  'set-aside': 'work',
};

const isKnown = (verb: string): verb is keyof typeof gone =>
  verb === 'hazard' ||
  verb === 'perform' ||
  verb === 'reverse' ||
  verbSchema.safeParse(verb).success;

export const verbRiskGone = (verb: string): Risk => (isKnown(verb) ? gone[verb] : 'work');

/** What protects must come first: done later, it protects less. */
export const verbRiskMoved = (verb: string): Risk =>
  verbRiskGone(verb) === 'protection' ? 'protection' : 'order';

/** Without any, it is words that changed. */
export const mostDangerous = (risks: readonly Risk[]): Risk =>
  risks.toSorted((a, b) => rankOf(a) - rankOf(b))[0] ?? 'work';
