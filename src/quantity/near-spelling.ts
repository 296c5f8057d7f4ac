/** The known names nearest to a text, at most two slips away (one for short texts), in their given order. */
export function nearestTo(text: string, known: readonly string[]): readonly string[] {
  const allowed = text.length <= 2 ? 0 : text.length <= 4 ? 1 : 2;
  const near = known
    .filter((name) => Math.abs(name.length - text.length) <= allowed)
    .map((name) => ({ name, slips: slipsBetween(text, name) }));
  const fewest = Math.min(allowed, ...near.map(({ slips }) => slips));
  return near.filter(({ slips }) => slips === fewest).map(({ name }) => name);
}

/** How many letters must be added, dropped, changed or swapped with their neighbour (optimal string alignment). */
function slipsBetween(a: string, b: string): number {
  let beforeLast: number[] = [];
  let last = Array.from({ length: b.length + 1 }, (_, column) => column);
  for (let row = 1; row <= a.length; row++) {
    const current = [row];
    for (let column = 1; column <= b.length; column++) {
      const changed = a[row - 1] === b[column - 1] ? 0 : 1;
      const swapped =
        row > 1 && column > 1 && a[row - 1] === b[column - 2] && a[row - 2] === b[column - 1];
      current.push(
        Math.min(
          (last[column] ?? 0) + 1,
          (current[column - 1] ?? 0) + 1,
          (last[column - 1] ?? 0) + changed,
          swapped ? (beforeLast[column - 2] ?? 0) + 1 : Number.POSITIVE_INFINITY,
        ),
      );
    }
    [beforeLast, last] = [last, current];
  }
  return last[b.length] ?? 0;
}
