import type { Element, ElementContent } from 'hast';
import { h } from 'hastscript';
import type { Definition, FootnoteDefinition } from 'mdast';
import type { TextDirective } from 'mdast-util-directive';
import { visit } from 'unist-util-visit';
import { allActions, allBlocks, allSteps, type LinkedProcedure, within } from '../link/index.ts';
import type { Action, Procedure, Section } from '../syntax/index.ts';
import { blocksMarkup } from './blocks.ts';
import { prose } from './prose.ts';
import type { ManualContext, SheetContext } from './sheet-context.ts';
import { phaseAnchor } from './site-links.ts';

/** The phases of a procedure with their hazards, steps and margin boxes. */
export function sheetBody(context: SheetContext): ElementContent[] {
  let depth = 1;
  return context.one.procedure.sections.flatMap((section) => {
    depth = section.title === undefined ? 1 : Math.max(2, Math.min(section.depth, depth + 1, 6));
    return phase(section, depth, context);
  });
}

/** `idPrefix` keeps the ids of text that is shown beside the body apart from those in it. */
export function sheetContext(
  one: LinkedProcedure,
  shared: ManualContext,
  idPrefix = '',
): SheetContext {
  const { procedure } = one;
  const taken = new Map<string, number>();
  const context: SheetContext = {
    ...shared,
    one,
    numbers: shared.numbersOf(one),
    actions: actionsByNode(procedure),
    inSteps: new Set([...allSteps(procedure)].flatMap(({ blocks }) => [...within(blocks)])),
    definitions: definitionsIn(procedure),
    freshId: (stem) => {
      const number = (taken.get(stem) ?? 0) + 1;
      taken.set(stem, number);
      return `${idPrefix}${stem}-${number}`;
    },
    blocks: (blocks) => blocksMarkup(blocks, context),
  };
  return context;
}

function phase(section: Section, depth: number, context: SheetContext): Element[] {
  const id = phaseAnchor(section.id);
  const content = context.blocks(section.blocks);
  if (section.title === undefined) {
    return content.length === 0
      ? []
      : [h('section.phase', { id, ariaLabel: 'Before the work' }, content)];
  }
  const heading = h(`h${depth}`, prose(section.heading, context));
  return [h('section.phase', { id }, [heading, ...content])];
}

function actionsByNode(procedure: Procedure): ReadonlyMap<TextDirective, Action> {
  const actions = [...allActions(procedure)];
  return new Map(
    actions.flatMap((action) => (action.node ? [[action.node, action] as const] : [])),
  );
}

function definitionsIn(procedure: Procedure): readonly (Definition | FootnoteDefinition)[] {
  const found: (Definition | FootnoteDefinition)[] = [];
  for (const block of allBlocks(procedure)) {
    if (block.type !== 'prose') continue;
    visit(block.node, (node) => {
      if (node.type === 'definition' || node.type === 'footnoteDefinition') found.push(node);
    });
  }
  return found;
}
