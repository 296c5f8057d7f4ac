/** A step by the number that it has where all machines are shown, and whether it is shown now. */
export interface NumberedStep {
  readonly number: string;
  readonly isShown: boolean;
}

/**
 * The numbers of the steps that are shown, closed up, by the numbers that they have where all are shown. A step
 * inside one that is not shown has none either.
 */
export function renumber(steps: readonly NumberedStep[]): ReadonlyMap<string, string> {
  const numbers = new Map<string, string>();
  const counts = new Map<string, number>();
  for (const { number, isShown } of steps.toSorted(byNumber)) {
    if (!isShown) continue;
    const end = number.lastIndexOf('.');
    const outer = end < 0 ? '' : number.slice(0, end);
    const prefix = end < 0 ? '' : numbers.get(outer);
    if (prefix === undefined) continue;
    const count = (counts.get(outer) ?? 0) + 1;
    counts.set(outer, count);
    numbers.set(number, end < 0 ? String(count) : `${prefix}.${count}`);
  }
  return numbers;
}

/** Outer before inner, 2 before 10. */
function byNumber(a: NumberedStep, b: NumberedStep): number {
  const [left, right] = [a, b].map(({ number }) => number.split('.').map(Number));
  const length = Math.max(left?.length ?? 0, right?.length ?? 0);
  for (let i = 0; i < length; i += 1) {
    const difference = (left?.[i] ?? 0) - (right?.[i] ?? 0);
    if (difference !== 0) return difference;
  }
  return 0;
}
