import type { Space, VariantSet } from '../applicability/index.ts';
import { blocksIn, type LinkedManual, type LinkedProcedure, sectionsFrom } from '../link/index.ts';
import type { Block, Perform, Section, Step, When } from '../syntax/index.ts';
import { type Duration, longest, minutesOf, noTime, together } from './duration.ts';
import { actionsOf, machinesOf } from './gather.ts';
import { machineParts } from './machine-parts.ts';
import { machinesMeant } from './machines-meant.ts';
import { hasWork, Piece } from './piece-of-work.ts';
import { mustFollow } from './step-order.ts';

/** How long a job takes on some machines. */
export interface WorkTime {
  readonly under: VariantSet;
  readonly duration: Duration;
}

/**
 * How long jobs take: the times and waits of their steps, those of performed procedures included as often
 * as they are performed. The machines of the procedure are parted by how long it takes on them. Of ways
 * through the work the longest counts, and of a range its end. A performed procedure is one piece of
 * work, which nothing is moved into; what it leaves waiting at its end may be used.
 */
export function workTimes(manual: LinkedManual): (one: LinkedProcedure) => readonly WorkTime[] {
  const clock = new Clock(manual);
  return (one) => clock.whole(one, one.procedure.sections, one.procedure.id);
}

/** Where blocks stand: in whose text, for which machines, inside a step with a time of its own or not. */
interface Standing {
  readonly one: LinkedProcedure;
  readonly under: VariantSet;
  readonly isTimed: boolean;
}

class Clock {
  readonly #manual: LinkedManual;
  readonly #done = new Map<string, readonly WorkTime[]>();
  readonly #open = new Set<string>();
  readonly #meant = new Map<When, VariantSet>();

  constructor(manual: LinkedManual) {
    this.#manual = manual;
  }

  whole(one: LinkedProcedure, sections: readonly Section[], key: string): readonly WorkTime[] {
    const before = this.#done.get(key);
    if (before !== undefined) return before;
    if (this.#open.has(key)) return [];
    this.#open.add(key);
    const under = machinesOf(one, this.#manual);
    const blocks = sections.flatMap((section) => section.blocks);
    const { space } = this.#manual.manual;
    const parts = machineParts(space, under, this.#conditions(blocks, under));
    const times = joined(
      space,
      parts.map((part) => ({
        under: part,
        duration: this.#time(blocks, { one, under: part, isTimed: false }),
      })),
    );
    this.#open.delete(key);
    this.#done.set(key, times);
    return times;
  }

  /** One after the other, as far as they must follow each other. */
  #time(blocks: readonly Block[], at: Standing): Duration {
    const pieces = [...this.#pieces(blocks, at)];
    return together(
      pieces.map(({ duration }) => duration),
      (later, earlier) => {
        const [a, b] = [pieces[later], pieces[earlier]];
        return a !== undefined && b !== undefined && mustFollow(a.turn, b.turn);
      },
    );
  }

  *#pieces(blocks: readonly Block[], at: Standing): Generator<Piece> {
    for (const block of blocks) {
      if (block.type === 'steps') {
        for (const step of block.steps) {
          if (this.#isFor(step.when, at))
            yield new Piece(at.one, step.blocks, this.#stepTime(step, at), step);
        }
        continue;
      }
      if (!this.#isFor('when' in block ? block.when : undefined, at)) continue;
      const own = this.#ownTime(block, at);
      if (own !== undefined) yield new Piece(at.one, [block], own);
      if (block.type !== 'branch') yield* this.#pieces(blocksIn(block), at);
    }
  }

  /** The time of a block beside the steps, without that of the blocks inside it, unless it is a branch. */
  #ownTime(block: Block, at: Standing): Duration | undefined {
    if (block.type === 'perform')
      return longest(this.#performed(block, at.under).map(({ duration }) => duration));
    if (block.type === 'reverse') return { ...noTime, isWhole: false };
    // It may take more than one round.
    if (block.type === 'repeat') return { ...noTime, isWhole: at.isTimed };
    if (block.type === 'branch') {
      const ways = block.ways.map((way) => this.#time(way.blocks, at));
      return longest(block.optional ? [...ways, noTime] : ways);
    }
    return block.type === 'needs' || actionsOf(block).length > 0 ? noTime : undefined;
  }

  /** What a step says of itself, then what is in it, then its wait. */
  #stepTime(step: Step, at: Standing): Duration {
    const time = step.time && minutesOf(step.time.text);
    const wait = step.wait && minutesOf(step.wait.text);
    const isTimed = at.isTimed || step.time !== undefined;
    const inside = this.#time(step.blocks, { ...at, isTimed });
    const isTold = time !== undefined || wait !== undefined || isTimed || hasWork(step.blocks);
    const own = time ?? 0;
    const after = wait ?? 0;
    return {
      work: own + inside.work,
      waits: inside.waits + after,
      busy: own + inside.busy,
      elapsed: own + inside.elapsed + after,
      isWhole: isTold && inside.isWhole,
    };
  }

  #performed({ procedure, part }: Perform, under: VariantSet): readonly WorkTime[] {
    const target = this.#manual.procedures.get(procedure.id);
    const section = part && target?.section(part);
    if (target === undefined || (part !== undefined && section === undefined)) return [];
    const { space } = this.#manual.manual;
    const times =
      section === undefined
        ? this.whole(target, target.procedure.sections, procedure.id)
        : this.whole(target, sectionsFrom(target, section), `${procedure.id}#${section.id}`);
    return times
      .map((time) => ({ ...time, under: space.and(time.under, under) }))
      .filter((time) => time.under !== space.none);
  }

  #isFor(when: When | undefined, { under }: Standing): boolean {
    const { space } = this.#manual.manual;
    return space.and(this.#machines(when), under) !== space.none;
  }

  #machines(when: When | undefined): VariantSet {
    const { space } = this.#manual.manual;
    if (when === undefined) return space.all;
    const known = this.#meant.get(when) ?? machinesMeant(space, when.condition, space.all);
    this.#meant.set(when, known);
    return known;
  }

  /** The sets of machines that the times of a text turn on. */
  *#conditions(blocks: readonly Block[], under: VariantSet): Generator<VariantSet> {
    const { space } = this.#manual.manual;
    for (const block of blocks) {
      const inside = 'when' in block ? space.and(under, this.#machines(block.when)) : under;
      yield inside;
      if (block.type === 'perform') yield* this.#performed(block, inside).map((time) => time.under);
      if (block.type !== 'steps') yield* this.#conditions(blocksIn(block), inside);
      else {
        for (const step of block.steps) {
          const within = space.and(inside, this.#machines(step.when));
          yield within;
          yield* this.#conditions(step.blocks, within);
        }
      }
    }
  }
}

/** The machines on which a job takes equally long are one part. */
function joined(space: Space, times: readonly WorkTime[]): readonly WorkTime[] {
  const byDuration = new Map<string, WorkTime>();
  for (const time of times) {
    const key = JSON.stringify(time.duration);
    const known = byDuration.get(key);
    const under = known === undefined ? time.under : space.or(known.under, time.under);
    byDuration.set(key, { ...time, under });
  }
  return [...byDuration.values()].sort((a, b) => space.compare(a.under, b.under));
}
