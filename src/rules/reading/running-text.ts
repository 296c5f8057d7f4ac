import type { Nodes } from 'mdast';
import type { Place } from '../../../schemas/finding.ts';
import type { Locator } from '../../source/index.ts';
import type { Action, Prose } from '../../syntax/index.ts';
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

/** The running texts of a piece of prose, in order of reading. */
export function runningTexts(prose: Prose, source: Locator): RunningText[] {
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
  const offsets: number[] = [];
  const stretches: Stretch[] = [];
  const add = (words: string, at: readonly number[]): void => {
    text += words;
    for (const offset of at) offsets.push(offset);
  };
  const visit = (node: Nodes): void => {
    const start = text.length;
    const from = node.position?.start.offset ?? 0;
    const kind = kindOf(node, actions);
    if (node.type === 'text') add(node.value, offsetsOf(node.value, source.text, from));
    else if (node.type === 'break') add(' ', [from]);
    else if ('children' in node && node.children.length > 0)
      for (const child of node.children) visit(child);
    else add(blank, [from]);
    if (kind !== undefined)
      stretches.push({ start, end: text.length, kind, action: actions.get(node) });
  };
  if ('children' in block) for (const child of block.children) visit(child);
  return {
    text,
    stretches,
    placeOf: (start, end) => {
      const from = offsets[start] ?? block.position?.start.offset ?? 0;
      const to = end > start ? (offsets[end - 1] ?? from) + 1 : from;
      return source.place(from, to);
    },
  };
}

function kindOf(node: Nodes, actions: ReadonlyMap<Nodes, Action>): Stretch['kind'] | undefined {
  if (actions.has(node)) return 'action';
  if (node.type === 'link') return 'link';
  if (node.type === 'inlineCode') return 'code';
  return node.type === 'image' ? 'picture' : undefined;
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
