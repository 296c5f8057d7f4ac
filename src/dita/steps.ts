import { allOf, type MachineCondition } from '../applicability/index.ts';
import {
  onlyFor,
  phaseAnchor,
  prose,
  type XmlElement,
  type XmlNode,
  xml,
} from '../render/index.ts';
import type { Block, Guarded, HazardPanel, Section } from '../syntax/index.ts';
import { blocks } from './blocks.ts';
import { flow, wayLead } from './flow.ts';
import { hazardStatement } from './hazard.ts';
import { inline, plainOnly } from './inline.ts';
import { taskJob, taskStep } from './step.ts';
import type { TaskTopic } from './topic.ts';

/** The work of a procedure as the parts of a task's body. */
export interface Work {
  /** What stands before the first heading. */
  readonly context: readonly XmlNode[];
  /** Steps, with sections between them that hold headings and whatever else is no step. */
  readonly steps: readonly XmlElement[];
  /** What follows the last step. */
  readonly result: readonly XmlNode[];
}

/**
 * All steps of a task are one list, and count through it as on the sheet: steps in a choice or a repetition
 * stand in the list too, with the condition before them and "In any case" after them.
 */
export function workOf(sections: readonly Section[], topic: TaskTopic): Work {
  const writer = new Writer(topic);
  for (const section of sections) writer.section(section);
  return writer.work();
}

class Writer {
  readonly #topic: TaskTopic;
  readonly #context: XmlNode[] = [];
  readonly #steps: XmlElement[] = [];
  /** What waits for the next step. */
  #lead: XmlNode[] = [];
  #isBefore = true;
  /** Conditions that the text is in at this place, outer before inner; undefined for what no machine decides. */
  readonly #around: (MachineCondition | undefined)[] = [];
  /** True after the last step that a condition is for. */
  #isAfter = false;

  constructor(topic: TaskTopic) {
    this.#topic = topic;
  }

  section({ id, title, heading, blocks: content }: Section): void {
    if (title !== undefined) {
      this.#endContext();
      this.#isAfter = false;
      const words = inline(prose(heading, this.#topic.context), this.#topic, plainOnly);
      const attributes = { id: phaseAnchor(id), outputclass: 'phase' };
      this.#lead.push(xml('p', attributes, [xml('b', {}, words)]));
    }
    this.#blocks(content);
  }

  work(): Work {
    if (this.#steps.length === 0)
      return { context: [...this.#context, ...this.#lead], steps: [], result: [] };
    return { context: this.#context, steps: this.#steps, result: this.#lead };
  }

  #blocks(content: readonly Block[]): void {
    let hazards: HazardPanel[] = [];
    const endHazards = (): void => {
      this.#lead.push(...hazards.map((panel) => hazardStatement(panel, this.#topic)));
      hazards = [];
    };
    for (const block of content) {
      this.#endCondition();
      if (block.type === 'hazard') hazards.push(block);
      else if (block.type === 'steps') {
        const guards = hazards;
        hazards = [];
        block.steps.forEach((step, i) => {
          const own = i === 0 ? guards : [];
          this.#step(taskStep(step, own, allOf(this.#around), this.#topic));
        });
      } else if (block.type === 'perform' || block.type === 'reverse') {
        this.#step(taskJob(block, hazards, allOf(this.#around), this.#topic));
        hazards = [];
      } else {
        endHazards();
        this.#block(block);
      }
    }
    endHazards();
  }

  #block(block: Exclude<Block, { type: 'hazard' | 'steps' | 'perform' | 'reverse' }>): void {
    if (!hasSteps(block)) {
      this.#lead.push(...flow([block], this.#topic));
      return;
    }
    switch (block.type) {
      case 'branch':
        block.ways.forEach((way, i) => {
          this.#lead.push(...wayLead(block, i, this.#topic));
          this.#inside(undefined, way.blocks);
        });
        break;
      case 'repeat': {
        const [lead] = flow([{ ...block, blocks: [] }], this.#topic);
        if (lead !== undefined) this.#lead.push(lead);
        this.#inside(undefined, block.blocks);
        break;
      }
      case 'guarded':
        this.#only(block);
        break;
      default:
        this.#blocks('blocks' in block ? block.blocks : []);
        return;
    }
    this.#isAfter = true;
  }

  #only(block: Guarded): void {
    this.#lead.push(...blocks(onlyFor(block.when, this.#topic.context), this.#topic));
    this.#inside(this.#topic.context.presence.when(block.when), block.blocks);
  }

  #inside(condition: MachineCondition | undefined, content: readonly Block[]): void {
    this.#around.push(condition);
    this.#blocks(content);
    this.#around.pop();
    this.#isAfter = false;
  }

  /** Says that what follows is not for the condition alone that went before. */
  #endCondition(): void {
    if (!this.#isAfter) return;
    this.#isAfter = false;
    const words = this.#around.length === 0 ? 'In any case:' : 'After that:';
    this.#lead.push(xml('p', {}, [words]));
  }

  #step(step: XmlElement): void {
    this.#endContext();
    if (this.#lead.length > 0) this.#steps.push(xml('stepsection', {}, this.#lead));
    this.#lead = [];
    this.#steps.push(step);
  }

  #endContext(): void {
    if (!this.#isBefore) return;
    this.#isBefore = false;
    this.#context.push(...this.#lead);
    this.#lead = [];
  }
}

function hasSteps(block: Block): boolean {
  if (block.type === 'steps' || block.type === 'perform' || block.type === 'reverse') return true;
  if (block.type === 'branch') return block.ways.some((way) => way.blocks.some(hasSteps));
  return 'blocks' in block && block.blocks.some(hasSteps);
}
