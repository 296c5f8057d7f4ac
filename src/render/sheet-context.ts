import type { ElementContent } from 'hast';
import type { Definition, FootnoteDefinition } from 'mdast';
import type { TextDirective } from 'mdast-util-directive';
import type { Item } from '../catalogue/index.ts';
import { ownerOf, type PlacedJob, type Presence, type StepNumbers } from '../derive/index.ts';
import type { LinkedManual, LinkedProcedure } from '../link/index.ts';
import type { UnitPolicy } from '../quantity/index.ts';
import type { Action, Block, FigureBlock, Section } from '../syntax/index.ts';
import type { ShownFigure } from './shown-figures.ts';
import { itemHref } from './site-links.ts';

/** What all sheets of a manual have in common. */
export interface ManualContext {
  readonly manual: LinkedManual;
  readonly policy: UnitPolicy;
  /** From a sheet's folder to the site's root: `../../`. */
  readonly base: string;
  numbersOf(one: LinkedProcedure): StepNumbers;
  documentNumber(one: LinkedProcedure): string;
  procedureInFile(path: string): LinkedProcedure | undefined;
}

/** What the pieces of one sheet, or of a job that is printed in place on it, need to know of it. */
export interface SheetContext extends ManualContext {
  readonly one: LinkedProcedure;
  /** Those that are printed: all, or those of a part that is performed in place. */
  readonly sections: readonly Section[];
  /** The job that is printed in place; undefined for the sheet's own text. */
  readonly job: PlacedJob | undefined;
  /** Rank of the heading of its title, and the id of that. */
  readonly title: number;
  readonly titleId: string;
  readonly ranks: ReadonlyMap<Section, number>;
  readonly numbers: StepNumbers;
  /** For which machines the parts of the sheet are. */
  readonly presence: Presence;
  readonly actions: ReadonlyMap<TextDirective, Action>;
  /** Blocks that stand in a step, where its margin shows their boxes. */
  readonly inSteps: ReadonlySet<Block>;
  /** Figures with call-outs. Empty for text that is shown beside the body, which has no figures of its own. */
  readonly figures: ReadonlyMap<FigureBlock, ShownFigure>;
  /** Link and note definitions, which Markdown lets stand anywhere in the file. */
  readonly definitions: readonly (Definition | FootnoteDefinition)[];
  /** The id of a section. */
  phaseId(section: Section): string;
  /** For a job that is printed in place in this text. */
  inside(job: PlacedJob): SheetContext;
  /** An id that no other element of the sheet has, for labels. */
  freshId(stem: string): string;
  /** Blocks of the language as the content of a sheet. */
  blocks(blocks: readonly Block[]): ElementContent[];
}

/** Address of an item's entry from the sheet; undefined where it has no page beside the sheet. */
export function itemAddress(item: Item, { manual, one, base }: SheetContext): string | undefined {
  const owner = ownerOf(manual, one, item);
  return owner.kind === 'machine' ? base + itemHref(item, owner) : undefined;
}
