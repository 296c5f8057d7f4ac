import type { PhrasingContent } from 'mdast';
import type { TextDirective } from 'mdast-util-directive';
import { readAction } from './action.ts';
import { tokensOf } from './directive-tokens.ts';
import { knownDirective } from './forms.ts';
import { tellMisplaced, tellUnknown } from './misplaced.ts';
import { readPhrasing, type Setting } from './phrasing.ts';
import { type Reading, spanOf } from './reading.ts';

/** What stands in the text for a text directive: itself where it is an action, else its words. */
export function readTextDirective(
  reading: Reading,
  node: TextDirective,
  setting: Setting,
): readonly PhrasingContent[] {
  const { name } = node;
  const known = knownDirective(name);
  const { opening } = tokensOf(node);
  const isBare = opening.end - opening.start === name.length + 1;
  const isAccident = isBare && (known === undefined || followsWord(reading, opening.start));
  if (isAccident || /^\d/.test(name)) return asText(reading, node, setting);

  if (known?.verb === undefined) {
    if (known === undefined) tellUnknown(reading, node);
    else tellMisplaced(reading, node);
    return wordsInstead(reading, node, setting);
  }
  if (!('actions' in setting)) {
    tellMisplaced(
      reading,
      node,
      `in ${setting.names}`,
      'its place in a step, or in a sentence of its own',
    );
    return wordsInstead(reading, node, setting);
  }
  if (tellUnread(reading, node)) return wordsInstead(reading, node, setting);
  const action = readAction(reading, node, known.verb);
  if (action === undefined) return wordsInstead(reading, node, setting);
  setting.actions.push(action);
  node.children = readPhrasing(reading, node.children, { names: 'the words of another action' });
  return [node];
}

/**
 * Brackets or braces that follow a directive without attributes but are no part of it: after a space, not
 * closed, or holding what cannot stand there.
 */
function tellUnread(reading: Reading, node: TextDirective): boolean {
  const { opening, attributes } = tokensOf(node);
  if (attributes.length > 0) return false;
  const after = /^([ \t]*)([[{])/.exec(reading.text.slice(opening.end, opening.end + 8));
  const [all = '', gap = '', bracket = ''] = after ?? [];
  const isBare = opening.end - opening.start === node.name.length + 1;
  if (bracket === '' || (bracket === '[' && !isBare)) return false;
  reading.facts.push({
    kind: 'attribute-wrong',
    place: reading.place({ start: opening.start, end: opening.end + all.length }),
    directive: node.name,
    attribute: bracket === '[' ? '[…]' : '{…}',
    expected: gap === '' ? readable[bracket === '[' ? 'words' : 'attributes'] : readable.place,
  });
  return true;
}

const readable = {
  place: 'brackets and braces directly after it, without a space',
  words: 'words between [ and ]',
  attributes:
    'attributes between { and }, such as item=anvil-bolt, with quotes around a value that has spaces',
} as const;

function followsWord(reading: Reading, start: number): boolean {
  return /[\p{L}\p{N}_]$/u.test(reading.text.slice(Math.max(0, start - 2), start));
}

/** The words of a directive that is not understood; its source, where it has none. */
function wordsInstead(
  reading: Reading,
  node: TextDirective,
  setting: Setting,
): readonly PhrasingContent[] {
  if (node.children.length > 0) return readPhrasing(reading, node.children, setting);
  return [{ type: 'text', value: reading.source(tokensOf(node).opening), position: node.position }];
}

/** A colon that begins no directive: what was taken for one is text again, as it was written. */
function asText(
  reading: Reading,
  node: TextDirective,
  setting: Setting,
): readonly PhrasingContent[] {
  const { start, end } = spanOf(node);
  const first = node.children[0];
  const last = node.children.at(-1);
  if (node.position === undefined || first === undefined || last === undefined) {
    return [{ type: 'text', value: reading.source({ start, end }), position: node.position }];
  }
  const before = { start, end: spanOf(first).start };
  const after = { start: spanOf(last).end, end };
  const inside = { start: first.position?.start, end: last.position?.end };
  if (inside.start === undefined || inside.end === undefined) return node.children;
  return [
    {
      type: 'text',
      value: reading.source(before),
      position: { start: node.position.start, end: inside.start },
    },
    ...readPhrasing(reading, node.children, setting),
    {
      type: 'text',
      value: reading.source(after),
      position: { start: inside.end, end: node.position.end },
    },
  ];
}
