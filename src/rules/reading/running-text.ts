import type { Nodes } from 'mdast';
import type { Place } from '../../../schemas/finding.ts';
import type { LinkedProcedure } from '../../link/index.ts';
import { type Locator, locator } from '../../source/index.ts';
import type { Action, Procedure, Prose } from '../../syntax/index.ts';
import { onceFor } from './once-for.ts';
import { offsetsOf } from './text-offsets.ts';

/** A stretch of a running text that is not plain words. Offsets count in the running text. */
export interface Stretch {
  readonly start: number;
  readonly end: number;
  readonly kind: 'action' | 'link' | 'code' | 'picture';
  readonly action: Action | undefined;
}

/** The words of one paragraph, heading or cell as they are read, with the way back to the file. */
export interface RunningText {
  readonly text: string;
  readonly stretches: readonly Stretch[];
  placeOf(start: number, end: number): Place;
}

/** What stands in the running text for something that has no words of its own. */
export const blank = '\uFFFC';

/** The running texts of a piece of prose of a procedure, in order of reading. Made once for all rules. */
export function runningTexts(prose: Prose, { procedure }: LinkedProcedure): readonly RunningText[] {
  const known = made.get(prose);
  if (known !== undefined) return known;
  const texts = textsOf(prose, sourceOf(procedure));
  made.set(prose, texts);
  return texts;
}

const made = new WeakMap<Prose, readonly RunningText[]>();
const sourceOf = onceFor(({ file, text }: Procedure) => locator(file, text));

function textsOf(prose: Prose, source: Locator): RunningText[] {
  const actions = new Map<Nodes, Action>();
  for (const action of prose.actions)
    if (action.node !== undefined) actions.set(action.node, action);
  return textBlocks(prose.node).map((node) => collect(node, actions, source));
}

/** The innermost nodes that hold running words. */
function textBlocks(node: Nodes): Nodes[] {
  if (node.type === 'paragraph' || node.type === 'heading' || node.type === 'tableCell')
    return [node];
  return 'children' in node ? node.children.flatMap(textBlocks) : [];
}

function collect(block: Nodes, actions: ReadonlyMap<Nodes, Action>, source: Locator): RunningText {
  let text = '';
  const pieces: Piece[] = [];
  const stretches: Stretch[] = [];
  const add = (words: string, from: number, isText: boolean): void => {
    text += words;
    pieces.push({ words, from, isText });
  };
  const visit = (node: Nodes): void => {
    const start = text.length;
    const from = node.position?.start.offset ?? 0;
    const kind = kindOf(node, actions);
    if (node.type === 'text') add(node.value, from, true);
    else if (node.type === 'break') add(' ', from, false);
    else if ('children' in node && node.children.length > 0)
      for (const child of node.children) visit(child);
    else add(blank, from, false);
    if (kind !== undefined)
      stretches.push({ start, end: text.length, kind, action: actions.get(node) });
  };
  if ('children' in block) for (const child of block.children) visit(child);
  let offsets: readonly number[] | undefined;
  return {
    text,
    stretches,
    placeOf: (start, end) => {
      offsets ??= pieces.flatMap((piece) => offsetsIn(piece, source));
      const from = offsets[start] ?? block.position?.start.offset ?? 0;
      const to = end > start ? (offsets[end - 1] ?? from) + 1 : from;
      return source.place(from, to);
    },
  };
}

/** Words as they are read, and where they begin in the file. */
interface Piece {
  readonly words: string;
  readonly from: number;
  /** False where one letter stands for something else. */
  readonly isText: boolean;
}

const offsetsIn = ({ words, from, isText }: Piece, source: Locator): readonly number[] =>
  isText ? offsetsOf(words, source.text, from) : [from];

function kindOf(node: Nodes, actions: ReadonlyMap<Nodes, Action>): Stretch['kind'] | undefined {
  if (actions.has(node)) return 'action';
  if (node.type === 'link') return 'link';
  if (node.type === 'inlineCode') return 'code';
  return node.type === 'image' ? 'picture' : undefined;
}

/** The words without quotations, code and pictures, at the same offsets. */
export const plainWords = onceFor(({ text, stretches }: RunningText): string =>
  blanked(text, [
    ...stretches.filter(({ kind }) => kind === 'code' || kind === 'picture'),
    ...quotationsIn(text),
  ]),
);

export function quotationsIn(text: string): { start: number; end: number }[] {
  return [...text.matchAll(/"[^"]*"|“[^”]*”/g)].map(({ index, 0: quoted }) => ({
    start: index,
    end: index + quoted.length,
  }));
}

/** A text with some stretches blanked out, all else at the same offsets. Stretches may overlap. */
export function blanked(
  text: string,
  stretches: readonly { readonly start: number; readonly end: number }[],
): string {
  let words = '';
  for (const { start, end } of stretches.toSorted((a, b) => a.start - b.start)) {
    words += text.slice(words.length, start);
    words += blank.repeat(Math.max(0, end - words.length));
  }
  return words + text.slice(words.length);
}
