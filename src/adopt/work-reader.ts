import type { Catalogue } from '../catalogue/index.ts';
import {
  commandReader,
  type ItemFinder,
  itemFinder,
  type WorkReader,
  type WorkVerb,
  workVerbs,
} from '../rules/index.ts';
import { meantBy } from './item-candidates.ts';

const allVerbs = [...new Set(workVerbs.flatMap(({ verbs }) => verbs))];

const onto = 'in|on|into|onto|back|home|over|against|under|around';

/** Verbs that change nothing, and words that the rule passes over because they are seldom work. */
const more: readonly WorkVerb[] = [
  { words: '(?:check|inspect|examine|look at)', verbs: ['check'], needs: 'item', anywhere: true },
  { words: '(?:measure|read)', verbs: ['measure'], needs: 'object', anywhere: true },
  {
    words:
      '(?:apply|coat|wet|pack|brush|smear|lubricate|grease|(?:put|wipe|lay) (?:an?|one|two) (?:thin )?(?:film|layer|coat|bead|drops?) of|put (?:an?|one|two) (?:thin )?(?:film|layer|coat|bead|drops?))',
    verbs: ['apply'],
    needs: 'item',
    anywhere: true,
  },
  {
    words: '(?:take|pull) (?:the |its |both |all )?(?:caps?|plugs?) (?:off|out of)',
    verbs: ['uncap'],
    needs: 'item',
  },
  {
    words: '(?:put|mark|throw)',
    tail: '(?:with|as|to) (?:the )?scrap|for (?:repair or )?scrap',
    verbs: ['discard', 'remove', 'replace'],
    needs: 'item',
  },
  { words: 'pour', tail: 'in|into', verbs: ['fill'], needs: 'item' },
  {
    words: '(?:screw|wind|turn|twist)',
    tail: '(?<!\\bto )off',
    verbs: ['remove', 'withdraw'],
    needs: 'item',
  },
  { words: '(?:screw|wind)', tail: 'out', verbs: ['remove', 'withdraw'], needs: 'item' },
  { words: 'turn', tail: 'back|to the left', verbs: ['loosen'], needs: 'item' },
  { words: 'turn', tail: 'in|on|to the right', verbs: ['tighten'], needs: 'item' },
  {
    words: '(?:swing|raise)',
    tail: 'out|open',
    verbs: ['set', 'set-aside', 'remove'],
    needs: 'item',
  },
  {
    words: 'swing',
    tail: 'in|shut|closed|back',
    verbs: ['set', 'return', 'install'],
    needs: 'item',
  },
  { words: '(?:raise|lower|set|release)', verbs: ['set'], needs: 'item' },
  {
    words: '(?:hang|hook|guide|thread|push|knock|stand|put|place)',
    tail: onto,
    verbs: ['install', 'fit', 'connect'],
    needs: 'item',
  },
  {
    words: '(?:lower|raise)',
    tail: 'in|into|onto (?!the (?:ground|floor))|on (?!the (?:ground|floor))',
    verbs: ['install', 'set'],
    needs: 'item',
  },
  { words: 'lower', verbs: ['set', 'return'], needs: 'item' },
];

/**
 * Finds more than the rule does, since a person reads what comes of it: entries by a part of their name, and checks.
 */
export function workReader(catalogue: Catalogue): WorkReader {
  return { find: finderFor(catalogue), commands };
}

const commands = commandReader([...more, ...workVerbs]);

function finderFor(catalogue: Catalogue): ItemFinder {
  const exact = itemFinder(catalogue);
  return (text) => {
    const meant = meantBy(text, catalogue, allVerbs);
    const phrase = meant?.phrase;
    const item = meant?.candidates.fits[0];
    if (phrase === undefined) return exact(text);
    return item === undefined ? exact(text) : { item, start: phrase.start, end: phrase.end };
  };
}
