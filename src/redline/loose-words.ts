import { nameOf } from '../catalogue/index.ts';
import type { LinkedProcedure } from '../link/index.ts';
import { actionKey } from './action-facts.ts';
import { type Names, sameNames } from './names.ts';
import { panelKey, panelWords } from './panel-words.ts';
import type { Piece } from './piece.ts';
import { type Loose, looseOf, performText } from './piece-shifts.ts';

/** "step 7", "the text under “Removal”". */
export function stepName({ number, section }: Piece): string {
  if (number !== undefined) return `step ${number}`;
  return section.title === undefined
    ? 'the text at the start'
    : `the text under “${section.title}”`;
}

/** The same for what may have gone from one piece into another. */
export function looseKey(loose: Loose, one: LinkedProcedure, names: Names): string {
  switch (loose.what) {
    case 'action':
      return actionKey(loose.of, names);
    case 'hazard':
      return panelKey(loose.of, one, names);
    case 'perform':
      return performText(loose.of, names);
    case 'reverse':
      return names.section(loose.of.of.id);
  }
}

/** What it says, or what is done. */
export function looseText(loose: Loose, one: LinkedProcedure): string {
  switch (loose.what) {
    case 'action': {
      const { words, verb, item } = loose.of;
      const entry = one.item(item);
      return words === '' ? `${verb} ${entry === undefined ? item.id : nameOf(entry)}` : words;
    }
    case 'hazard': {
      const { signal, hazard, harm } = panelWords(loose.of, one);
      return `${signal.toUpperCase()}: ${[hazard, harm].filter(Boolean).join('. ')}`;
    }
    case 'perform':
      return `job ${performText(loose.of, sameNames)}`;
    case 'reverse':
      return `the way back of ${loose.of.of.id}`;
  }
}

/** The words of a piece, or what is done in it where it has none. */
export function pieceText(piece: Piece, one: LinkedProcedure): string {
  const said = piece.words.filter((text) => /[\p{L}\p{N}]/u.test(text));
  if (said.length > 0) return said.join(' ');
  const done = looseOf(piece).map((loose) => looseText(loose, one));
  return done.length > 0 ? done.join('; ') : 'an empty step';
}
