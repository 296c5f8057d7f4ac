import type { VariantSet } from '../applicability/index.ts';
import { blocksIn, type LinkedManual, type LinkedProcedure, sectionsFrom } from '../link/index.ts';
import type { Action, Block, Perform, Section, Step } from '../syntax/index.ts';
import { machinesMeant } from './machines-meant.ts';

/**
 * How one fact of a job is added up from what its text says. `under` is the machines for which the text
 * holds: those of its procedure, narrowed by every condition around it.
 */
export interface Gathering<T> {
  /** All parts, one after the other; of no parts, nothing. */
  sum(parts: readonly T[]): T;
  /** Only one of the ways is taken. */
  choose(ways: readonly T[]): T;
  /** What the front matter says. */
  front?(one: LinkedProcedure, under: VariantSet): T | undefined;
  /** What a step says beside its blocks. */
  step?(step: Step, one: LinkedProcedure, under: VariantSet): T | undefined;
  /** What a block says without the blocks in it. */
  block?(block: Block, one: LinkedProcedure, under: VariantSet): T | undefined;
  /** What a performed job comes to where it is performed, at a step or beside them; unchanged when absent. */
  performed?(value: T, at: Step | Perform, under: VariantSet, perform: Perform): T;
}

/**
 * Adds up over procedures, the procedures that they perform included, each as often as it is performed.
 * Every procedure is read once, so the cost grows with the manual. A procedure, or a
 * section, that performs itself, directly or by way of others, is cut where it comes round.
 */
export function gatherer<T>(
  manual: LinkedManual,
  gathering: Gathering<T>,
): (one: LinkedProcedure) => T {
  const walk = new Walk(manual, gathering);
  return (one) => walk.whole(one, one.procedure.sections, one.procedure.id);
}

/** The actions that stand in a block itself, not in the blocks inside it. */
export function actionsOf(block: Block): readonly Action[] {
  if (block.type === 'prose') return block.actions;
  return block.type === 'torque' && block.action !== undefined ? [block.action] : [];
}

/** Where blocks stand: in whose text, for which machines, in which step. */
interface Standing {
  readonly one: LinkedProcedure;
  readonly under: VariantSet;
  readonly step: Step | undefined;
}

class Walk<T> {
  readonly #manual: LinkedManual;
  readonly #gathering: Gathering<T>;
  readonly #done = new Map<string, T>();
  readonly #open = new Set<string>();

  constructor(manual: LinkedManual, gathering: Gathering<T>) {
    this.#manual = manual;
    this.#gathering = gathering;
  }

  whole(one: LinkedProcedure, sections: readonly Section[], key: string): T {
    const before = this.#done.get(key);
    if (before !== undefined) return before;
    if (this.#open.has(key)) return this.#gathering.sum([]);
    this.#open.add(key);
    const under = machinesOf(one, this.#manual);
    const parts: T[] = [];
    put(parts, this.#gathering.front?.(one, under));
    for (const section of sections) {
      this.#blocks(section.blocks, { one, under, step: undefined }, parts);
    }
    const value = this.#gathering.sum(parts);
    this.#open.delete(key);
    this.#done.set(key, value);
    return value;
  }

  #blocks(blocks: readonly Block[], at: Standing, parts: T[]): void {
    for (const block of blocks) {
      const inside = this.#narrowed(at, 'when' in block ? block.when : undefined);
      put(parts, this.#gathering.block?.(block, at.one, inside.under));
      if (block.type === 'perform') put(parts, this.#performed(block, inside));
      else if (block.type === 'branch') {
        const ways = block.ways.map((way) => this.#together(way.blocks, inside));
        if (block.optional) ways.push(this.#gathering.sum([]));
        parts.push(this.#gathering.choose(ways));
      } else if (block.type === 'steps') {
        for (const step of block.steps) {
          const within = { ...this.#narrowed(inside, step.when), step };
          put(parts, this.#gathering.step?.(step, at.one, within.under));
          this.#blocks(step.blocks, within, parts);
        }
      } else this.#blocks(blocksIn(block), inside, parts);
    }
  }

  #narrowed(at: Standing, when: Step['when']): Standing {
    if (when === undefined) return at;
    const { space } = this.#manual.manual;
    return { ...at, under: machinesMeant(space, when.condition, at.under) };
  }

  #together(blocks: readonly Block[], at: Standing): T {
    const parts: T[] = [];
    this.#blocks(blocks, at, parts);
    return this.#gathering.sum(parts);
  }

  #performed(block: Perform, { step, under }: Standing): T | undefined {
    const value = this.#called(block);
    if (value === undefined || this.#gathering.performed === undefined) return value;
    return this.#gathering.performed(value, step ?? block, under, block);
  }

  #called({ procedure, part }: Perform): T | undefined {
    const target = this.#manual.procedures.get(procedure.id);
    if (target === undefined) return undefined;
    if (part === undefined) return this.whole(target, target.procedure.sections, procedure.id);
    const section = target.section(part);
    return (
      section && this.whole(target, sectionsFrom(target, section), `${procedure.id}#${part.id}`)
    );
  }
}

/** The machines that a procedure is for. */
export function machinesOf({ procedure }: LinkedProcedure, { manual }: LinkedManual): VariantSet {
  return machinesMeant(manual.space, procedure.when?.condition, manual.space.all);
}

function put<T>(parts: T[], part: T | undefined): void {
  if (part !== undefined) parts.push(part);
}
