import { idWords, itemName } from '../derive/index.ts';
import type { ItemState, StateFor } from '../ledger/index.ts';
import { escaped } from './markdown-text.ts';

/** Where an item stands: "4 of 8 out", "left: 8 tight; right: 8 out", "drained when feed = hydraulic, else full". */
export function stateText(states: readonly ItemState[]): string {
  return states
    .map((state) => {
      const where = state.instance === undefined ? '' : `${idWords(state.instance)}: `;
      return where + standingText(state);
    })
    .join('; ');
}

/** One instance of an item, for all variants. */
export function standingText({ standing, size }: ItemState): string {
  return standing
    .map((one) => {
      const when = one.when === undefined ? '' : ` (${one.when})`;
      return spreadText(one, size) + when;
    })
    .join(', ');
}

function spreadText({ spread }: StateFor, size: number): string {
  const [only, ...others] = spread;
  if (only !== undefined && others.length === 0 && size === 1) return idWords(only[0]);
  if (only !== undefined && others.length === 0)
    return `${size === 2 ? 'both' : `all ${size}`} ${idWords(only[0])}`;
  return spread.map(([state, count]) => `${count} of ${size} ${idWords(state)}`).join(', ');
}

/** Everything that is not home, as a list in Markdown. */
export function awayText(away: readonly ItemState[]): string {
  if (away.length === 0) return 'Everything is home.';
  return away
    .map((one) => {
      const where = one.instance === undefined ? '' : `, ${idWords(one.instance)}`;
      return `* ${escaped(`${itemName(one.item)}${where}: ${standingText(one)}`)}`;
    })
    .join('\n');
}
