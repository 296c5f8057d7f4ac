/**
 * The known name nearest to a misspelt one, if one is near enough to suggest: at most a third of its
 * letters inserted, left out, changed or swapped with their neighbour (optimal string alignment distance).
 * Of equally near names the first one given.
 */
export function nearName(written: string, known: Iterable<string>): string | undefined {
  const wanted = written.toLowerCase();
  let near: string | undefined;
  let limit = Math.max(1, Math.floor(wanted.length / 3)) + 1;
  for (const name of known) {
    if (Math.abs(name.length - wanted.length) >= limit) continue;
    const steps = distance(wanted, name.toLowerCase());
    if (steps < limit) {
      near = name;
      limit = steps;
    }
  }
  return near;
}

function distance(from: string, to: string): number {
  let beforeLast: readonly number[] = [];
  let last: readonly number[] = Array.from({ length: to.length + 1 }, (_, index) => index);
  for (let row = 1; row <= from.length; row += 1) {
    const current = [row];
    for (let column = 1; column <= to.length; column += 1) {
      const same = from[row - 1] === to[column - 1];
      const swapped = from[row - 1] === to[column - 2] && from[row - 2] === to[column - 1];
      current.push(
        Math.min(
          (last[column] ?? 0) + 1,
          (current[column - 1] ?? 0) + 1,
          (last[column - 1] ?? 0) + (same ? 0 : 1),
          row > 1 && column > 1 && swapped ? (beforeLast[column - 2] ?? 0) + 1 : Infinity,
        ),
      );
    }
    beforeLast = last;
    last = current;
  }
  return last[to.length] ?? 0;
}
