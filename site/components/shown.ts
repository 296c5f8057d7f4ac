import { anyOf } from '../../src/applicability/machine-condition.ts';
import type { Sheet, Sometimes } from '../../src/render/book.ts';

/** The attribute of an element that is there for some machines only: those of any of the rows in it. */
export function shown(...rows: readonly Sometimes[]) {
  const condition = anyOf(rows.map((row) => row.condition));
  return condition === undefined ? {} : { 'data-when': JSON.stringify(condition) };
}

/** The attribute of words that say for which machines something is: they go where it is for the chosen one. */
export function said({ condition }: Sometimes) {
  return condition === undefined ? {} : { 'data-unless': JSON.stringify(condition) };
}

/** The attribute of a number of steps that differs from machine to machine. */
export function counted(count: Sheet['stepCount']) {
  return count.length === 1 ? {} : { 'data-count': JSON.stringify(count) };
}
