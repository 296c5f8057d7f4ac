import type { Place } from '../../../schemas/finding.ts';
import type { Item } from '../../catalogue/index.ts';
import { allBlocks, type LinkedProcedure } from '../../link/index.ts';
import { findPairs, type QuantityPair } from '../../quantity/index.ts';
import { locator, placeWithin } from '../../source/index.ts';
import type { Examined } from '../rule.ts';
import { blanked, type RunningText, runningTexts } from './running-text.ts';

/** A value that is said twice, in two units. */
export interface PairSaid {
  readonly pair: QuantityPair;
  /** The text that both stand in. */
  readonly text: string;
  readonly place: Place;
  readonly procedure: string | undefined;
  readonly item: string | undefined;
}

/** The doubled values of a manual: in prose, in hazards and front matter, and in the texts of the catalogue. */
export function* pairsSaid(examined: Examined): Generator<PairSaid> {
  const owners = new Map(examined.subjects.map(({ id, one }) => [one.procedure.file, id]));
  for (const item of examined.entries) yield* inItem(item, owners.get(item.place.file), examined);
  for (const { id: procedure, one } of examined.subjects) {
    yield* inFrontMatter(one, examined);
    for (const block of allBlocks(one.procedure)) {
      if (block.type === 'prose')
        for (const text of runningTexts(block, one)) yield* inProse(text, procedure);
      else if (block.type === 'hazard')
        for (const written of [block.hazard, block.harm])
          if (written !== undefined)
            yield* inText(written.text, written.place, { procedure, item: undefined }, examined);
    }
  }
}

type Owner = Pick<PairSaid, 'procedure' | 'item'>;

function* inProse(running: RunningText, procedure: string): Generator<PairSaid> {
  const { stretches } = running;
  const text = blanked(
    running.text,
    stretches.filter(({ kind }) => kind === 'code'),
  );
  for (const pair of findPairs(text)) {
    const place = running.placeOf(pair.first.start, pair.second.end);
    yield { pair, text, place, procedure, item: undefined };
  }
}

function* inText(
  text: string,
  whole: Place,
  owner: Owner,
  examined: Examined,
): Generator<PairSaid> {
  for (const pair of findPairs(text)) {
    const source = locator(whole.file, examined.text(whole.file));
    const stretch = { start: pair.first.start, end: pair.second.end };
    yield { pair, text, place: placeWithin(source, whole, text, stretch), ...owner };
  }
}

function* inFrontMatter({ procedure }: LinkedProcedure, examined: Examined): Generator<PairSaid> {
  const owner = { procedure: procedure.id, item: undefined };
  for (const member of ['summary', 'interval'] as const) {
    const text = procedure.front[member];
    if (text !== undefined) yield* inText(text, procedure.placeOf(member), owner, examined);
  }
}

function* inItem(
  item: Item,
  procedure: string | undefined,
  examined: Examined,
): Generator<PairSaid> {
  for (const [member, text] of textsOf(item)) {
    if (text !== undefined)
      yield* inText(text, item.placeOf(member), { procedure, item: item.id }, examined);
  }
}

/** The members of an entry that hold running words. */
function textsOf(item: Item): readonly (readonly [member: string, text: string | undefined])[] {
  switch (item.kind) {
    case 'hazard':
      return [
        ['hazard', item.hazard],
        ['harm', item.harm],
        ['avoid', item.avoid],
      ];
    case 'circuit':
      return [
        ['note', item.note],
        ['fluid', item.fluid],
        ['bleed', item.bleed],
        ['dispose', item.dispose],
      ];
    case 'tool':
      return [
        ['note', item.note],
        ['size', item.size],
      ];
    case 'consumable':
      return [
        ['note', item.note],
        ['specification', item.specification],
      ];
    case 'fastener':
      return [
        ['note', item.note],
        ['thread', item.thread],
      ];
    default:
      return [['note', item.note]];
  }
}
