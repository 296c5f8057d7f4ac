import { idWords, itemName } from '../derive/index.ts';
import { type ItemState, itemStates } from '../ledger/index.ts';
import { within } from '../link/index.ts';
import type { Block } from '../syntax/index.ts';
import type { Desk } from './desk.ts';
import { stateAt } from './state-here.ts';
import { awayText } from './state-words.ts';

/** What is not home at the end of a section, to be shown behind its last line. */
export interface StillOut {
  readonly offset: number;
  readonly text: string;
  /** Every item with its state, in Markdown. */
  readonly more: string;
}

/** Items that a line shows; the rest is counted. */
const shown = 5;

/** One for each section between two offsets in which something is done. */
export function stillOut(desk: Desk, file: string, from: number, to: number): readonly StillOut[] {
  const written = desk.written(file);
  if (written === undefined) return [];
  return written.sections.flatMap((section) => {
    const { offset } = section.place.end;
    const isDone = [...within(section.blocks)].some(does);
    if (offset < from || offset > to || !isDone) return [];
    const state = stateAt(desk, file, offset);
    if (state === undefined) return [];
    return [{ offset, text: textOf(state.away), more: awayText(state.away) }];
  });
}

function does(block: Block): boolean {
  if (block.type === 'prose') return block.actions.length > 0;
  return block.type === 'perform' || block.type === 'reverse' || block.type === 'torque';
}

function textOf(away: readonly ItemState[]): string {
  if (away.length === 0) return 'everything home';
  const groups = new Map<string, string[]>();
  // What moved last is what the section was about.
  for (const one of away.toReversed().slice(0, shown)) {
    const [state, count] = mainState(one);
    const where = one.instance === undefined ? '' : ` (${idWords(one.instance)})`;
    const name = count > 1 ? `${count} ${itemName(one.item, count)}` : itemName(one.item);
    const group = groups.get(state) ?? [];
    groups.set(state, [...group, name + where]);
  }
  const parts = [...groups].map(([state, names]) => `${idWords(state)}: ${names.join(', ')}`);
  const more = away.length > shown ? ` and ${away.length - shown} more` : '';
  return `still ${parts.join('; ')}${more}`;
}

/** The first state that is not home, with its pieces. */
function mainState({ standing, item }: ItemState): readonly [string, number] {
  for (const { spread, isHome } of standing) {
    if (isHome) continue;
    const away = spread.find(([state]) => state !== homeOf(item)) ?? spread[0];
    if (away !== undefined) return away;
  }
  return ['away', 1];
}

const homeOf = (item: ItemState['item']): string | undefined => itemStates(item)[0];
