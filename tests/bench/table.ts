const columns = { what: 54, value: 12, ratio: 10, target: 10 } as const;

export function tellHeading(title: string, ratioTo: string): void {
  const words = title.padEnd(columns.what + columns.value);
  console.log(`${words}${ratioTo.padStart(columns.ratio)}${'target'.padStart(columns.target)}`);
}

/**
 * A line of the table. `ratio` is a multiple of something measured in the same run. `target` is the most that the
 * ratio may be; of a row without a ratio, the most that the value may be.
 */
export function tellRow(
  what: string,
  value: number,
  unit: 's' | 'ms' | 'GB' | 'x',
  ratio?: number,
  target?: number,
): void {
  const cells = [
    `  ${what}`.padEnd(columns.what),
    `${value.toFixed(unit === 'ms' ? 0 : 2)} ${unit.padEnd(2)}`.padStart(columns.value),
    (ratio?.toFixed(3) ?? '').padStart(columns.ratio),
    (target === undefined ? '' : String(target)).padStart(columns.target),
    target === undefined ? '' : (ratio ?? value) <= target ? '  met' : '  missed',
  ];
  console.log(cells.join('').trimEnd());
}
