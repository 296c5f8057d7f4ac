import type { Place } from '../../schemas/finding.ts';
import { resolveCondition, type Space, type VariantSet } from '../applicability/index.ts';
import type { LinkedProcedure } from '../link/index.ts';
import type { Action, Block, Branch, Perform, Section, When } from '../syntax/index.ts';

/** One thing that is done, with the variants and ways through for which it is done. */
export type Op = {
  readonly under: VariantSet;
  /** Counts steps and sub-steps; blocks between steps belong to the step before them. */
  readonly step: number;
  readonly place: Place;
} & (
  | { readonly type: 'act'; readonly action: Action }
  | { readonly type: 'perform'; readonly perform: Perform }
);

/** The sections of a procedure as a straight line of guarded operations, for the variants in `under`. */
export function programOf(
  { procedure }: LinkedProcedure,
  sections: readonly Section[],
  space: Space,
  under: VariantSet,
): readonly Op[] {
  const builder = new Builder(space);
  const all = builder.narrow(under, procedure.when);
  for (const section of sections) builder.blocks(section.blocks, all);
  return builder.ops;
}

class Builder {
  readonly ops: Op[] = [];
  readonly #space: Space;
  #step = 0;

  constructor(space: Space) {
    this.#space = space;
  }

  narrow(under: VariantSet, when: When | undefined): VariantSet {
    if (when === undefined) return under;
    return this.#space.and(under, resolveCondition(this.#space, when.condition).value);
  }

  blocks(blocks: readonly Block[], under: VariantSet): void {
    for (const block of blocks) this.#block(block, under);
  }

  #block(block: Block, under: VariantSet): void {
    switch (block.type) {
      case 'prose':
        for (const action of block.actions) this.#act(action, under);
        return;
      case 'steps':
        for (const step of block.steps) {
          this.#step += 1;
          this.blocks(step.blocks, this.narrow(under, step.when));
        }
        return;
      case 'torque': {
        const inside = this.narrow(under, block.when);
        if (block.action !== undefined) this.#act(block.action, inside);
        this.blocks(block.blocks, inside);
        return;
      }
      case 'guarded':
      case 'hazard':
      case 'fluid':
        this.blocks(block.blocks, this.narrow(under, block.when));
        return;
      case 'needs':
      case 'figure':
        this.blocks(block.blocks, under);
        return;
      case 'branch':
        this.#branch(block, under);
        return;
      case 'perform': {
        const inside = this.narrow(under, block.when);
        this.ops.push({
          type: 'perform',
          perform: block,
          under: inside,
          step: this.#step,
          place: block.place,
        });
        return;
      }
      case 'reverse':
        return;
    }
  }

  #act(action: Action, under: VariantSet): void {
    const inside = this.narrow(under, action.when);
    this.ops.push({ type: 'act', action, under: inside, step: this.#step, place: action.place });
  }

  /** What the technician finds is an attribute that no machine decides. */
  #branch(branch: Branch, under: VariantSet): void {
    const ways = branch.ways.map((way, i) => ({ value: `way ${i + 1}`, label: way.label }));
    const past = branch.optional ? [{ value: 'none', label: undefined }] : [];
    const [first, ...others] = [...ways, ...past];
    if (first === undefined) return;
    const attribute = this.#space.fresh([first, ...others], branch.ways[0]?.label ?? '');
    branch.ways.forEach((way, i) => {
      const taken = this.#space.is(attribute.id, `way ${i + 1}`);
      this.blocks(way.blocks, this.#space.and(under, taken));
    });
  }
}
