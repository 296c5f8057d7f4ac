import { compareText } from '../../source/index.ts';

/** One share of so many. */
export interface ShareNumber {
  /** From 1. */
  readonly number: number;
  readonly of: number;
}

/** A part of a manual that is to be shared out. */
export interface Portion {
  readonly path: string;
  readonly length: number;
  /** Parts of one group depend on the same files: they stay together as far as shares of even length allow. */
  readonly group: string;
}

/**
 * The paths of one share, in order of path. Each part is in exactly one share, whatever their order; the shares are
 * about as long as each other. With more shares than parts some are empty.
 */
export function shareOut(
  portions: readonly Portion[],
  { number, of }: ShareNumber,
): readonly string[] {
  const inOrder = portions.toSorted(
    (a, b) => compareText(a.group, b.group) || compareText(a.path, b.path),
  );
  // An empty file is work too.
  const total = inOrder.reduce((sum, { length }) => sum + length + 1, 0);
  let given = 0;
  const mine = inOrder.filter(({ length }) => {
    const middle = given + (length + 1) / 2;
    given += length + 1;
    return Math.floor((middle / total) * of) === number - 1;
  });
  return mine.map(({ path }) => path).sort(compareText);
}
