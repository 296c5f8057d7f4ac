import type { ElementContent } from 'hast';
import type { Definition, FootnoteDefinition } from 'mdast';
import type { TextDirective } from 'mdast-util-directive';
import { visit } from 'unist-util-visit';
import { type PlacedJob, Presence } from '../derive/index.ts';
import { allActions, allBlocks, allSteps, type LinkedProcedure, within } from '../link/index.ts';
import type { Action, Procedure } from '../syntax/index.ts';
import { blocksMarkup } from './blocks.ts';
import { headingRanks, phases } from './phases.ts';
import type { ManualContext, SheetContext } from './sheet-context.ts';
import { type ShownFigures, shownFigures } from './shown-figures.ts';
import { phaseAnchor } from './site-links.ts';

/** The phases of a procedure with their hazards, steps and margin boxes. */
export function sheetBody(context: SheetContext): ElementContent[] {
  return phases(context);
}

/** `idPrefix` keeps the ids of text that is shown beside the body apart from those in it. */
export function sheetContext(
  one: LinkedProcedure,
  shared: ManualContext,
  idPrefix = '',
): SheetContext {
  const { sections } = one.procedure;
  const numbers = shared.numbersOf(one);
  const figures = idPrefix === '' ? shownFigures(sections, numbers) : new Map();
  const text = { one, sections, numbers, job: undefined, title: 1 };
  return contextOf(text, shared, { idPrefix, figures });
}

interface Text extends Pick<SheetContext, 'one' | 'sections' | 'numbers' | 'job'> {
  /** Rank of the title above it. */
  readonly title: number;
}

function contextOf(
  text: Text,
  shared: ManualContext,
  sheet: { readonly idPrefix: string; readonly figures: ShownFigures },
): SheetContext {
  const { one, sections, job } = text;
  const { procedure } = one;
  const taken = new Map<string, number>();
  const place = job === undefined ? '' : `in-${job.key}-`;
  const ranks = headingRanks(sections, text.title);
  const context: SheetContext = {
    ...shared,
    ...text,
    ranks,
    titleId: `${sheet.idPrefix}${place}job`,
    presence: new Presence(shared.manual.manual.space, one),
    actions: actionsByNode(procedure),
    inSteps: new Set([...allSteps(procedure)].flatMap(({ blocks }) => [...within(blocks)])),
    figures: sheet.figures.get(job) ?? new Map(),
    definitions: definitionsIn(procedure),
    phaseId: ({ id }) => place + phaseAnchor(id),
    freshId: (stem) => {
      const number = (taken.get(stem) ?? 0) + 1;
      taken.set(stem, number);
      return `${sheet.idPrefix}${place}${stem}-${number}`;
    },
    inside: (inner) => {
      const title = titleRank(inner, ranks);
      return contextOf({ ...inner, job: inner, title }, shared, sheet);
    },
    blocks: (blocks) => blocksMarkup(blocks, context),
  };
  return context;
}

/** One below the heading of the section in which the job is done. */
function titleRank({ within: section }: PlacedJob, ranks: SheetContext['ranks']): number {
  return Math.min(6, (ranks.get(section) ?? 1) + 1);
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
