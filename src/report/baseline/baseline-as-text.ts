import type { Baseline } from '../../../schemas/baseline.ts';

/** The file of a baseline: JSON with one line for each known finding, so that a version control shows which changed. */
export function baselineAsText({ baseline, known }: Baseline): string {
  const head = `{\n  "baseline": ${JSON.stringify(baseline)},\n  "known": [`;
  if (known.length === 0) return `${head}]\n}\n`;
  return `${head}\n${known.map((one) => `    ${JSON.stringify(one)}`).join(',\n')}\n  ]\n}\n`;
}
