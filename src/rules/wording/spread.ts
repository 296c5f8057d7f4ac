import type { Spread } from '../../ledger/index.ts';
import { allOf } from './lists.ts';
import { stateWord } from './states.ts';

/** "out", or "4 out and 4 tight" where the pieces differ. */
export function spreadWords(spread: Spread): string {
  const [first, ...rest] = spread;
  if (first !== undefined && rest.length === 0) return stateWord(first[0]);
  return allOf(spread.map(([state, count]) => `${count} ${stateWord(state)}`));
}

/** "out already"; what is not fitted is just that. */
export function alreadyWords(spread: Spread): string {
  const words = spreadWords(spread);
  if (spread.every(([state]) => state === 'away')) return words;
  return words.includes(' but not ') ? `already ${words}` : `${words} already`;
}

/** The same of things that are missed: one that is thrown away is out, too. */
export function missedWords(spread: Spread): string {
  const gone = countIn(spread, ['gone']);
  if (gone === 0) return spreadWords(spread);
  const out = gone + countIn(spread, ['out']);
  const rest = spread.filter(([state]) => state !== 'gone' && state !== 'out');
  return spreadWords([...rest, ['out', out]]);
}

/** As front matter says it: `out`, or `{ out: 4, tight: 4 }`. */
export function spreadYaml(spread: Spread): string {
  const [first, ...rest] = spread;
  if (first !== undefined && rest.length === 0) return first[0];
  return `{ ${spread.map(([state, count]) => `${state}: ${count}`).join(', ')} }`;
}

/** How many pieces are in some states. */
export function countIn(spread: Spread, states: readonly string[]): number {
  return spread.reduce((sum, [state, count]) => sum + (states.includes(state) ? count : 0), 0);
}
