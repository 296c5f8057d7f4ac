import { blocksIn, type LinkedProcedure } from '../link/index.ts';
import type { Block, Step } from '../syntax/index.ts';
import type { Duration } from './duration.ts';
import { type Turn, turnOf } from './step-order.ts';

/** A step or a block beside the steps, as the schedule sees it. Its turn is asked for only where there are waits. */
export class Piece {
  readonly duration: Duration;
  readonly #one: LinkedProcedure;
  readonly #blocks: readonly Block[];
  readonly #step: Step | undefined;
  #turn: Turn | undefined;

  constructor(one: LinkedProcedure, blocks: readonly Block[], duration: Duration, step?: Step) {
    this.duration = duration;
    this.#one = one;
    this.#blocks = blocks;
    this.#step = step;
  }

  get turn(): Turn {
    this.#turn ??= turnOf(this.#blocks, this.#one, this.#step);
    return this.#turn;
  }
}

/** True where the time of a step is that of the steps inside it, or of the job that it performs. */
export function hasWork(blocks: readonly Block[]): boolean {
  return blocks.some(
    (block) =>
      block.type === 'steps' ||
      block.type === 'perform' ||
      block.type === 'reverse' ||
      hasWork(blocksIn(block)),
  );
}
