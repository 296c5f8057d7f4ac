import type { States } from '../../schemas/front-matter.ts';
import type { Item } from '../catalogue/index.ts';
import type { LinkedProcedure } from '../link/index.ts';
import { compareText } from '../source/index.ts';
import { idWords } from './id-words.ts';

/** An item at the start or the end of a job, with its state in words: "drained", "4 out, 4 tight". */
export interface StateWords {
  /** Undefined where the catalogue has no such entry. */
  readonly item: Item | undefined;
  readonly id: string;
  readonly state: string;
}

/** The states of `starts` or `leaves` in words, in order of id. */
export function stateWords(one: LinkedProcedure, states: States): readonly StateWords[] {
  return Object.keys(states)
    .sort(compareText)
    .map((id) => ({ id, item: one.item(id), state: inWords(states[id] ?? {}) }));
}

function inWords(state: States[string]): string {
  if (typeof state === 'string') return idWords(state);
  const counts = Object.entries(state).filter(([, count]) => count > 0);
  return counts.map(([name, count]) => `${count} ${idWords(name)}`).join(', ');
}
