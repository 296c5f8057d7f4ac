import type { TextDirective } from 'mdast-util-directive';
import {
  allOf,
  anyOf,
  type MachineCondition,
  machineCondition,
  type Space,
} from '../applicability/index.ts';
import { blocksIn, type LinkedProcedure } from '../link/index.ts';
import type {
  Action,
  Block,
  HazardPanel,
  Perform,
  Prose,
  Section,
  Step,
  When,
} from '../syntax/index.ts';
import { sentencesOf } from './sentences.ts';
import type { Numbered } from './step-numbers.ts';

/** A job that a text performs; `when` undefined is always. */
export interface Performed {
  readonly perform: Perform;
  readonly when: MachineCondition | undefined;
}

/**
 * For which machines parts of a procedure say anything, from their own conditions and from those of all that is
 * in them. Undefined is always.
 */
export class Presence {
  readonly #space: Space;
  readonly #one: LinkedProcedure;

  constructor(space: Space, one: LinkedProcedure) {
    this.#space = space;
    this.#one = one;
  }

  when(when: Pick<When, 'condition'> | undefined): MachineCondition | undefined {
    return machineCondition(when?.condition, this.#space);
  }

  step(step: Step): MachineCondition | undefined {
    return allOf([this.when(step.when), this.blocks(step.blocks)]);
  }

  numbered(numbered: Numbered): MachineCondition | undefined {
    return numbered.type === 'step' ? this.step(numbered) : this.when(numbered.when);
  }

  /** A hazard of the catalogue is there where its entry is. */
  hazard({ when, of }: HazardPanel): MachineCondition | undefined {
    const entry = of === undefined ? undefined : this.#one.item(of)?.when;
    return allOf([this.when(when), machineCondition(entry, this.#space)]);
  }

  /** Several blocks, one of which is enough. */
  blocks(blocks: readonly Block[]): MachineCondition | undefined {
    return anyOf(blocks.map((block) => this.#block(block)));
  }

  /**
   * Of a whole procedure or one section and those below it, each step of the first rank with the machines that
   * do it.
   */
  firstRank(sections: readonly Section[]): readonly (MachineCondition | undefined)[] {
    return sections.flatMap(({ blocks }) => this.#firstRank(blocks, []));
  }

  /** Each job that some sections perform, with the machines on which they do, in order of reading. */
  performs(sections: readonly Section[]): readonly Performed[] {
    return sections.flatMap(({ blocks }) => this.#performs(blocks, []));
  }

  #performs(
    blocks: readonly Block[],
    around: readonly (MachineCondition | undefined)[],
  ): readonly Performed[] {
    return blocks.flatMap((block) => {
      const here = [...around, 'when' in block ? this.when(block.when) : undefined];
      if (block.type === 'perform') return [{ perform: block, when: allOf(here) }];
      if (block.type !== 'steps') return this.#performs(blocksIn(block), here);
      return block.steps.flatMap((step) =>
        this.#performs(step.blocks, [...here, this.when(step.when)]),
      );
    });
  }

  #firstRank(
    blocks: readonly Block[],
    around: readonly (MachineCondition | undefined)[],
  ): (MachineCondition | undefined)[] {
    return blocks.flatMap((block) => {
      if (block.type === 'steps')
        return block.steps.map((step) => allOf([...around, this.step(step)]));
      if (block.type === 'perform' || block.type === 'reverse')
        return [allOf([...around, this.when(block.when)])];
      const own = 'when' in block ? this.when(block.when) : undefined;
      return this.#firstRank(blocksIn(block), [...around, own]);
    });
  }

  #block(block: Block): MachineCondition | undefined {
    switch (block.type) {
      case 'prose':
        return this.#prose(block);
      case 'hazard':
        return this.hazard(block);
      case 'steps':
        return anyOf(block.steps.map((step) => this.step(step)));
      case 'perform':
      case 'reverse':
        return this.when(block.when);
      case 'torque':
      case 'fluid':
        return block.blocks.length === 0
          ? this.when(block.when)
          : anyOf([this.when(block.when), this.blocks(block.blocks)]);
      case 'guarded':
        return allOf([this.when(block.when), this.blocks(block.blocks)]);
      case 'figure':
        return undefined;
      default:
        return this.blocks(blocksIn(block));
    }
  }

  #prose({ node, actions }: Prose): MachineCondition | undefined {
    if (node.type !== 'paragraph') return undefined;
    const byNode = new Map<TextDirective, Action>(
      actions.flatMap((action) => (action.node === undefined ? [] : [[action.node, action]])),
    );
    const sentences = sentencesOf(node.children, (directive) =>
      this.when(byNode.get(directive)?.when),
    );
    return anyOf(sentences.map(({ when }) => when));
  }
}
