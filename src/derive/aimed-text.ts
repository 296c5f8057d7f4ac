import type { LinkedProcedure } from '../link/index.ts';
import type { Action, Block, Perform, Ref, Reverse, Step } from '../syntax/index.ts';

/** What has a number on a sheet, in the text as written, by what stands for it in the aimed one. */
export type Originals = ReadonlyMap<Step | Perform | Reverse, Step | Perform | Reverse>;

/** A text as it is done `each=right`. */
export interface AimedText {
  readonly one: LinkedProcedure;
  readonly originals: Originals;
}

/**
 * A procedure whose text, where it works at one instance (`each=left`), works at the other instead, as the
 * ledger takes it. The author's words stay; those made from the catalogue name the right place.
 */
export function aimedText(target: LinkedProcedure, instance: Ref): AimedText {
  const originals = new Map<Step | Perform | Reverse, Step | Perform | Reverse>();
  const copied = <T extends Step | Perform | Reverse>(copy: T, original: T): T => {
    originals.set(copy, original);
    return copy;
  };
  const inBlock = (block: Block): Block => {
    switch (block.type) {
      case 'prose':
        return { ...block, actions: block.actions.map(aimed) };
      case 'perform':
        return copied({ ...block, each: block.each ?? instance }, block);
      case 'reverse':
        return copied({ ...block, blocks: block.blocks.map(inBlock) }, block);
      case 'steps':
        return {
          ...block,
          steps: block.steps.map((step) =>
            copied({ ...step, blocks: step.blocks.map(inBlock) }, step),
          ),
        };
      case 'branch': {
        const ways = block.ways.map((way) => ({ ...way, blocks: way.blocks.map(inBlock) }));
        return { ...block, ways };
      }
      case 'torque': {
        const action = block.action && aimed(block.action);
        return { ...block, action, blocks: block.blocks.map(inBlock) };
      }
      default:
        return { ...block, blocks: block.blocks.map(inBlock) };
    }
  };
  const aimed = (action: Action): Action =>
    isAimed(action, instance, target) ? { ...action, each: [instance] } : action;
  const sections = target.procedure.sections.map((section) => ({
    ...section,
    blocks: section.blocks.map(inBlock),
  }));
  const one = {
    ...target,
    procedure: { ...target.procedure, sections },
    section: ({ id }: Ref) => sections.find((section) => section.id === id),
  };
  return { one, originals };
}

/** True of an action at one instance of an item that has the other one too. */
export function isAimed(action: Action, instance: Ref, one: LinkedProcedure): boolean {
  const item = one.item(action.item);
  return (
    action.each.length === 1 &&
    item !== undefined &&
    'each' in item &&
    (item.each?.includes(instance.id) ?? false)
  );
}
