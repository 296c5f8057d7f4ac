import type { Place } from '../../schemas/finding.ts';
import { resolveCondition, type Space, type VariantSet } from '../applicability/index.ts';
import type { LinkedProcedure } from '../link/index.ts';
import type { Action, Block, Branch, Perform, Reverse, Section, When } from '../syntax/index.ts';
import { WaysFound } from './ways-found.ts';

/** One thing that is done, with the variants and ways through for which it is done. */
export type Op = {
  readonly under: VariantSet;
  /** Counts steps and sub-steps; blocks between steps belong to the step before them. */
  readonly step: number;
  /** The step of the procedure that the run began with, also for what a performed one does; 0 before the first. */
  readonly top: number;
  /** Id of the section it stands in. */
  readonly section: string;
  readonly place: Place;
  /** Where the procedure that the run began with performs what this is part of. */
  readonly via?: Place;
} & (
  | { readonly type: 'act'; readonly action: Action }
  | { readonly type: 'perform'; readonly perform: Perform }
  /** A step begins. */
  | { readonly type: 'step' }
  /** Where a `::reverse` that is not written out yet stands. Does nothing. */
  | { readonly type: 'reverse'; readonly reverse: Reverse }
);

/** An action that is done. */
export type Act = Extract<Op, { type: 'act' }>;
/** A procedure, or a section of one, that is performed. */
export type PerformOp = Extract<Op, { type: 'perform' }>;

/** The sections of a procedure as a straight line of guarded operations, for the variants in `under`. */
export function programOf(
  { procedure }: LinkedProcedure,
  sections: readonly Section[],
  space: Space,
  under: VariantSet,
): readonly Op[] {
  const builder = new Builder(space);
  const all = builder.narrow(under, procedure.when);
  for (const section of sections) builder.section(section, all);
  return builder.ops;
}

class Builder {
  readonly ops: Op[] = [];
  readonly #space: Space;
  #step = 0;
  #section = '';
  readonly #ways: WaysFound;

  constructor(space: Space) {
    this.#space = space;
    this.#ways = new WaysFound(space);
  }

  narrow(under: VariantSet, when: When | undefined): VariantSet {
    if (when === undefined) return under;
    const { value } = resolveCondition(this.#space, when.condition, this.#ways.labels);
    return this.#space.and(under, value);
  }

  section(section: Section, under: VariantSet): void {
    this.#section = section.id;
    this.blocks(section.blocks, under);
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
          const inside = this.narrow(under, step.when);
          this.ops.push({ type: 'step', ...this.#at(step.place, inside) });
          this.blocks(step.blocks, inside);
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
      case 'repeat':
        // Twice stands for any number of rounds: what holds from one round to the next holds for all.
        this.blocks(block.blocks, under);
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
          ...this.#at(block.place, inside),
        });
        return;
      }
      case 'reverse': {
        const inside = this.narrow(under, block.when);
        this.ops.push({
          type: 'reverse',
          reverse: block,
          ...this.#at(block.place, inside),
        });
        return;
      }
    }
  }

  #act(action: Action, under: VariantSet): void {
    const inside = this.narrow(under, action.when);
    this.ops.push({ type: 'act', action, ...this.#at(action.place, inside) });
  }

  #at(place: Place, under: VariantSet) {
    return {
      under,
      step: this.#step,
      top: this.#step,
      section: this.#section,
      place,
    };
  }

  #branch(branch: Branch, under: VariantSet): void {
    const taken = this.#ways.taken(branch);
    branch.ways.forEach((way, i) => {
      this.blocks(way.blocks, this.#space.and(under, taken[i] ?? this.#space.none));
    });
  }
}
