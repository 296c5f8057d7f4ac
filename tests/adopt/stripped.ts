import type { Item } from '../../src/catalogue/index.ts';
import { actionWords } from '../../src/derive/index.ts';
import type { LinkedManual, LinkedProcedure } from '../../src/link/index.ts';
import { allActions } from '../../src/link/index.ts';
import type { Action } from '../../src/syntax/index.ts';

/** A directive that was taken out, and where its words stand in the text without it. */
export interface Stripped {
  readonly action: Action;
  readonly words: string;
  readonly start: number;
  readonly end: number;
  /** True where its words came from the catalogue. */
  readonly isWordless: boolean;
}

/** A procedure as plain words: each `:verb[words]{…}` replaced by its words, or by those of the catalogue. */
export function strippedOf(
  one: LinkedProcedure,
  { manual }: LinkedManual,
): { readonly text: string; readonly stripped: readonly Stripped[] } {
  const { text } = one.procedure;
  const stripped: Stripped[] = [];
  let out = '';
  let from = 0;
  for (const action of inOrder(one)) {
    const { start, end } = action.place;
    const item = one.item(action.item);
    if (item === undefined) continue;
    const source = text.slice(start.offset, end.offset);
    if (!/^:[a-z]/.test(source)) continue;
    const label = /^:[a-z-]+\[([\s\S]*)\]\{[^}]*\}$/.exec(source)?.[1];
    const words = label ?? wordsOf(action, item, one, manual);
    out += text.slice(from, start.offset);
    stripped.push({
      action,
      words,
      start: out.length,
      end: out.length + words.length,
      isWordless: label === undefined,
    });
    out += words;
    from = end.offset;
  }
  return { text: out + text.slice(from), stripped };
}

/** Actions with a node of their own in the text; a torque block keeps its own. */
function inOrder({ procedure }: LinkedProcedure): Action[] {
  return [...allActions(procedure)]
    .filter(({ node }) => node !== undefined)
    .sort((a, b) => a.place.start.offset - b.place.start.offset);
}

function wordsOf(
  action: Action,
  item: Item,
  one: LinkedProcedure,
  manual: LinkedManual['manual'],
): string {
  const { before, name, after } = actionWords(action, item, one, manual.policy);
  return before + name + after;
}
