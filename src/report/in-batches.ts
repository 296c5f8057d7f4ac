/** Characters of text in a batch: about two hundred procedures. */
const batchLength = 1_000_000;

/** Paths of files in their order, cut into batches of at most a few characters more than `most`. */
export function inBatches(
  files: readonly { readonly path: string; readonly length: number }[],
  most: number = batchLength,
): string[][] {
  const batches: string[][] = [];
  let length = Number.POSITIVE_INFINITY;
  for (const file of files) {
    if (length >= most) {
      batches.push([]);
      length = 0;
    }
    batches.at(-1)?.push(file.path);
    length += file.length + 1;
  }
  return batches;
}

/** At most as long as a batch may be, and so that each of some workers has one. */
export const batchFor = (total: number, workers: number): number =>
  Math.min(batchLength, Math.ceil(total / workers));
