import type { Item } from '../../catalogue/index.ts';
import type { LinkedProcedure } from '../../link/index.ts';
import type { Action } from '../../syntax/index.ts';
import { countedAt } from '../reading/counted-noun.ts';
import { type ItemFinder, itemFinder } from '../reading/item-names.ts';
import { nounsOf } from '../reading/item-nouns.ts';
import { plainWords, type RunningText, type Stretch } from '../reading/running-text.ts';
import { stepTexts } from '../reading/step-texts.ts';
import type { Draft, Rule } from '../rule.ts';
import { directive } from '../wording/directive.ts';
import { code } from '../wording/lists.ts';
import { noAdjective } from '../wording/number-words.ts';
import { thingOf } from '../wording/thing.ts';

export const rule: Rule = {
  id: 'new-in-words',
  family: 'words',
  level: 'warning',
  *check(examined): Generator<Draft> {
    const refused = new Set(
      examined.facts('old-back').map(({ place }) => `${place.file} ${place.start.offset}`),
    );
    for (const { id: procedure, one } of examined.subjects) {
      const find = itemFinder(one.catalogue);
      for (const { text, stretch, action, item } of installs(one)) {
        const { place } = action;
        if (refused.has(`${place.file} ${place.start.offset}`)) continue;
        const found = newIn(text, stretch, item, find);
        if (found === undefined) continue;
        const words = text.text.slice(found.start, found.end).replace(/\s+/g, ' ');
        const thing = thingOf(examined, procedure, item.id);
        yield {
          place: text.placeOf(found.start, found.end),
          procedure,
          item: item.id,
          message: `The words say “${words}”, but the ledger puts the old one back`,
          data: { words },
          help: `Write ${code('new')} into the directive and ${directive('discard', thing)} where the old one comes out; or take the word out if the old one goes back.`,
        };
      }
    }
  },
};

interface Install {
  readonly text: RunningText;
  readonly stretch: Stretch;
  readonly action: Action;
  readonly item: Item;
}

/** Installs without `new` that have words. */
function* installs(one: LinkedProcedure): Generator<Install> {
  for (const { text } of stepTexts(one)) {
    for (const stretch of text.stretches) {
      const { action } = stretch;
      const item = action && one.item(action.item);
      if (action?.verb !== 'install' || action.isNew || item === undefined) continue;
      yield { text, stretch, action, item };
    }
  }
}

/** "new worm wheel" in a label: not "new or cleaned", not "the new seal of the worm wheel", not "no new". */
function newIn(
  text: RunningText,
  { start, end }: Stretch,
  item: Item,
  find: ItemFinder,
): { readonly start: number; readonly end: number } | undefined {
  const words = plainWords(text).slice(start, end);
  for (const { index } of words.matchAll(/\bnew(?=\s)/gi)) {
    if (notNew.test(words.slice(0, index))) continue;
    const counted = countedAt(words, index + 3, item);
    if (counted === undefined || !endsNoun.test(words.slice(counted.end))) continue;
    const { adjectives, noun } = counted;
    if (adjectives.some((word) => noAdjective.test(word))) continue;
    const named = find([...adjectives, noun].join(' '));
    if (named !== undefined && named.item !== item && !isNameOf(item, noun)) continue;
    return { start: start + index, end: start + counted.end };
  }
  return undefined;
}

const notNew =
  /\b(?:no|not|never|if|or|either|like|than|as|where|when|unless)\s+(?:an?\s+|the\s+)?$/i;

/** What follows does not make the noun a part of a longer one: not "new cover" of "new cover seal". */
const endsNoun =
  /^\s*(?:$|[.,;:!?()–—]|(?:in|on|onto|into|to|at|with|until|under|over|behind|around|through|between|against|and|so|from|back|by|as|where|home|flush|up|down|for|evenly)\b)/i;

function isNameOf(item: Item, noun: string): boolean {
  const { one, many } = nounsOf(item);
  const plain = noun.toLowerCase().replace(/\s+/g, ' ');
  return [...one, ...many].some((name) => name.toLowerCase() === plain);
}
