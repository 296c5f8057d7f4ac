import type { Limits } from './judge.ts';

/** The limits that a box for a reading carries. */
export function limitsOf({ dataset: { low, high } }: HTMLElement): Limits {
  return { low: numberIn(low), high: numberIn(high) };
}

const numberIn = (text: string | undefined): number | undefined =>
  text === undefined ? undefined : Number(text);
