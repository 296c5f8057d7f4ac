import { blocksIn, type LinkedManual, type LinkedProcedure } from '../link/index.ts';
import type { Action, Block, Perform, Section, Step } from '../syntax/index.ts';

/** How one fact of a job is added up from what its text says. */
export interface Gathering<T> {
  /** All parts, one after the other; of no parts, nothing. */
  sum(parts: readonly T[]): T;
  /** Only one of the ways is taken. */
  choose(ways: readonly T[]): T;
  /** What the front matter says. */
  front?(one: LinkedProcedure): T | undefined;
  /** What a step says beside its blocks. */
  step?(step: Step, one: LinkedProcedure): T | undefined;
  /** What a block says without the blocks in it. */
  block?(block: Block, one: LinkedProcedure): T | undefined;
}

/**
 * Adds up over procedures, the procedures that they perform included, each as often as it is performed.
 * Every procedure is read once, so the cost grows with the manual. A procedure that performs itself,
 * directly or by way of others, is cut where it comes round.
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
    if (this.#open.has(one.procedure.id)) return this.#gathering.sum([]);
    this.#open.add(one.procedure.id);
    const parts: T[] = [];
    put(parts, this.#gathering.front?.(one));
    for (const section of sections) this.#blocks(section.blocks, one, parts);
    const value = this.#gathering.sum(parts);
    this.#open.delete(one.procedure.id);
    this.#done.set(key, value);
    return value;
  }

  #blocks(blocks: readonly Block[], one: LinkedProcedure, parts: T[]): void {
    for (const block of blocks) {
      put(parts, this.#gathering.block?.(block, one));
      if (block.type === 'perform') put(parts, this.#performed(block));
      else if (block.type === 'branch') {
        const ways = block.ways.map((way) => this.#together(way.blocks, one));
        if (block.optional) ways.push(this.#gathering.sum([]));
        parts.push(this.#gathering.choose(ways));
      } else if (block.type === 'steps') {
        for (const step of block.steps) {
          put(parts, this.#gathering.step?.(step, one));
          this.#blocks(step.blocks, one, parts);
        }
      } else this.#blocks(blocksIn(block), one, parts);
    }
  }

  #together(blocks: readonly Block[], one: LinkedProcedure): T {
    const parts: T[] = [];
    this.#blocks(blocks, one, parts);
    return this.#gathering.sum(parts);
  }

  #performed({ procedure, part }: Perform): T | undefined {
    const target = this.#manual.procedures.get(procedure.id);
    if (target === undefined) return undefined;
    if (part === undefined) return this.whole(target, target.procedure.sections, procedure.id);
    const section = target.section(part);
    return section && this.whole(target, [section], `${procedure.id}#${part.id}`);
  }
}

function put<T>(parts: T[], part: T | undefined): void {
  if (part !== undefined) parts.push(part);
}
