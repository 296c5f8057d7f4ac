import { createSpace } from '../../src/applicability/index.ts';
import type { Catalogue } from '../../src/catalogue/index.ts';
import type { LinkedManual, LinkedProcedure } from '../../src/link/index.ts';
import type { Action, Block, Step, When } from '../../src/syntax/index.ts';
import { holds, type Machine } from '../applicability/enumeration.ts';

/** One machine, and what the technician finds: the label of the way taken of every branch that is taken. */
export interface Case {
  readonly machine: Machine;
  readonly taken: ReadonlySet<string>;
}

/**
 * The manual for one case alone: nothing in it has a condition, entries that the machine lacks are gone, and of
 * each branch the way that is taken stands in its place. It has no variants.
 */
export function specialise(manual: LinkedManual, one: Case): LinkedManual {
  const { space } = createSpace([], []);
  const procedures = new Map<string, LinkedProcedure>();
  const catalogues = new Map<Catalogue, Catalogue>();
  for (const [id, linked] of manual.procedures) {
    const { procedure } = linked;
    if (!isFor(procedure.when, one)) continue;
    const sections = procedure.sections.map((section) => ({
      ...section,
      blocks: blocksFor(section.blocks, one),
    }));
    // One entry is one object, whichever procedure speaks of it.
    const catalogue = catalogues.get(linked.catalogue) ?? catalogueFor(linked.catalogue, one);
    catalogues.set(linked.catalogue, catalogue);
    procedures.set(id, {
      procedure: { ...procedure, front: frontFor(linked, catalogue), when: undefined, sections },
      catalogue,
      item: (ref) => catalogue.items.get(typeof ref === 'string' ? ref : ref.id),
      section: (ref) => sections.find((section) => section.id === ref.id),
    });
  }
  return { ...manual, manual: { ...manual.manual, space }, procedures };
}

const isFor = (when: When | undefined, { machine }: Case): boolean =>
  when === undefined || holds(when.condition, machine);

/** A contract says nothing of an entry that the machine lacks. */
function frontFor({ procedure: { front }, catalogue: all }: LinkedProcedure, own: Catalogue) {
  const known = (states: typeof front.starts) =>
    Object.fromEntries(
      Object.entries(states).filter(([id]) => own.items.has(id) || !all.items.has(id)),
    );
  return { ...front, starts: known(front.starts), leaves: known(front.leaves) };
}

function catalogueFor(catalogue: Catalogue, { machine }: Case): Catalogue {
  const items = [...catalogue.items].flatMap(([id, item]) =>
    item.when === undefined || holds(item.when, machine)
      ? [[id, { ...item, when: undefined }] as const]
      : [],
  );
  return { ...catalogue, items: new Map(items) };
}

function blocksFor(blocks: readonly Block[], one: Case): readonly Block[] {
  return blocks.flatMap((block): readonly Block[] => {
    switch (block.type) {
      case 'prose':
        return [{ ...block, actions: block.actions.flatMap((action) => actionFor(action, one)) }];
      case 'steps':
        return [{ ...block, steps: block.steps.flatMap((step) => stepFor(step, one)) }];
      case 'guarded':
        return isFor(block.when, one) ? blocksFor(block.blocks, one) : [];
      case 'repeat':
        return [{ ...block, blocks: blocksFor(block.blocks, one) }];
      case 'branch':
        return block.ways
          .filter(({ label }) => one.taken.has(label))
          .flatMap((way) => blocksFor(way.blocks, one));
      case 'perform':
        return isFor(block.when, one) ? [{ ...block, when: undefined }] : [];
      default:
        throw new Error(`the generator makes no ${block.type}`);
    }
  });
}

const stepFor = (step: Step, one: Case): readonly Step[] =>
  isFor(step.when, one) ? [{ ...step, when: undefined, blocks: blocksFor(step.blocks, one) }] : [];

const actionFor = (action: Action, one: Case): readonly Action[] =>
  isFor(action.when, one) ? [{ ...action, when: undefined }] : [];

/** Every combination of one way of each branch; of one that may be passed by, also none. */
export function findingsOf(blocks: readonly Block[]): readonly ReadonlySet<string>[] {
  let all: readonly ReadonlySet<string>[] = [new Set()];
  for (const block of blocks) {
    if (block.type !== 'branch') continue;
    const labels = [...block.ways.map(({ label }) => label), ...(block.optional ? [''] : [])];
    all = all.flatMap((taken) => labels.map((label) => new Set([...taken, label])));
  }
  return all;
}
