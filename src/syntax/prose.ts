import type { BlockContent, DefinitionContent, RootContent } from 'mdast';
import { knownDirective } from './forms.ts';
import type { BlockDirective } from './label.ts';
import { insteadOfDirective, tellMisplaced, tellUnknown } from './misplaced.ts';
import type { Action, Prose } from './model.ts';
import { readPhrasing, type Setting } from './phrasing.ts';
import { tellRawHtml } from './raw-html.ts';
import type { Reading } from './reading.ts';

type Flow = BlockContent | DefinitionContent;

/** Markdown that is no block of the language; undefined where nothing of it is left to print. */
export function readProse(reading: Reading, node: RootContent): Prose | undefined {
  const actions: Action[] = [];
  const isKept = readFlowNode(reading, node, { actions });
  return isKept ? { type: 'prose', node, actions, place: reading.placeOf(node) } : undefined;
}

/** Reads what is inside a node, in place; false where nothing is left of it. */
function readFlowNode(reading: Reading, node: RootContent, setting: Setting): boolean {
  switch (node.type) {
    case 'heading':
      node.children = readPhrasing(reading, node.children, { names: 'a heading' });
      return true;
    case 'paragraph':
      node.children = readPhrasing(reading, node.children, setting);
      return node.children.some((child) => child.type !== 'text' || child.value.trim() !== '');
    case 'blockquote':
      node.children = readFlow(reading, node.children, setting);
      return node.children.length > 0;
    case 'footnoteDefinition':
      node.children = readFlow(reading, node.children, setting);
      return true;
    case 'list':
      for (const item of node.children) item.children = readFlow(reading, item.children, setting);
      return true;
    case 'table':
      for (const row of node.children) {
        for (const cell of row.children)
          cell.children = readPhrasing(reading, cell.children, setting);
      }
      return true;
    case 'html':
      tellRawHtml(reading, node);
      return false;
    case 'definition':
    case 'yaml':
      return false;
    default:
      return true;
  }
}

/** The same for several nodes; gives back those of which something is left. */
export function readFlow<N extends RootContent>(
  reading: Reading,
  nodes: readonly N[],
  setting: Setting,
): (N | Flow)[] {
  return nodes.flatMap((node): (N | Flow)[] => {
    if (node.type === 'containerDirective' || node.type === 'leafDirective') {
      tellNoProse(reading, node, setting);
      return readFlow(reading, insteadOfDirective(node), setting);
    }
    return readFlowNode(reading, node, setting) ? [node] : [];
  });
}

/** No block can stand in a bullet list or a quotation; its words and actions stay. */
function tellNoProse(reading: Reading, node: BlockDirective, setting: Setting): void {
  if (knownDirective(node.name) === undefined) tellUnknown(reading, node);
  else {
    const expected = 'its place in a numbered step or directly in a section';
    const found =
      'actions' in setting ? 'inside a bullet list or a quotation' : `in ${setting.names}`;
    tellMisplaced(reading, node, found, expected);
  }
}
