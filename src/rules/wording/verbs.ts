import type { Verb } from '../../../schemas/directives.ts';

/** How a verb is spoken of. `order` commands it, `done` says that it happened, `back` is true where it brings home. */
interface VerbWords {
  readonly order: string;
  readonly done: string;
  readonly back: boolean;
}

const out = (order: string, done: string): VerbWords => ({ order, done, back: false });
const back = (order: string, done: string): VerbWords => ({ order, done, back: true });

/** The command to do a verb to a thing, which stands inside "take out": "take it out", "remove it". */
export function orderTo(verb: Verb, thing: string): string {
  const [word = '', ...rest] = verbWords[verb].order.split(' ');
  return [word, thing, ...rest].join(' ');
}

export const verbWords: Readonly<Record<Verb, VerbWords>> = {
  remove: out('take out', 'taken out'),
  install: back('put in', 'put in'),
  replace: back('replace', 'replaced'),
  loosen: out('loosen', 'loosened'),
  tighten: back('tighten', 'tightened'),
  torque: back('torque', 'torqued'),
  disconnect: out('disconnect', 'disconnected'),
  connect: back('connect', 'connected'),
  cap: out('cap', 'capped'),
  uncap: back('uncap', 'uncapped'),
  'set-aside': out('set aside', 'set aside'),
  return: back('put back', 'put back'),
  drain: out('drain', 'drained'),
  fill: back('fill', 'filled'),
  bleed: back('bleed', 'bled'),
  relieve: out('relieve', 'relieved'),
  isolate: out('isolate', 'isolated'),
  restore: back('restore', 'restored'),
  fit: out('fit', 'fitted'),
  withdraw: back('take away', 'taken away'),
  set: out('set', 'set'),
  discard: out('throw away', 'thrown away'),
  apply: out('apply', 'applied'),
  check: out('check', 'checked'),
  measure: out('measure', 'measured'),
};
