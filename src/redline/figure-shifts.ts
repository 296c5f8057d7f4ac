import type { FigureBlock } from '../syntax/index.ts';
import { type Shift, sides } from './fact.ts';
import { listShifts } from './list-shifts.ts';
import type { Names } from './names.ts';
import { pairAlike } from './pair-alike.ts';
import { onOneLine } from './plain-words.ts';

/** Figures that came or went, and those that show or name other things. */
export function figureShifts(
  before: readonly FigureBlock[],
  after: readonly FigureBlock[],
  names: Names,
): readonly Shift[] {
  const like = (a: FigureBlock, b: FigureBlock): number => (a.src.text === b.src.text ? 1 : 0);
  const { pairs, gone, fresh } = pairAlike(before, after, like, 1);
  const files = (figures: readonly FigureBlock[]): readonly string[] =>
    figures.map(({ src }) => src.text);
  return [
    ...listShifts('figure', files(gone), files(fresh)),
    ...pairs.flatMap(([one, other]): readonly Shift[] => {
      const [a, b] = [calloutsOf(one, (id) => names.item(id)), calloutsOf(other, (id) => id)];
      const [alt, newAlt] = [onOneLine(one.alt ?? ''), onOneLine(other.alt ?? '')];
      return [
        ...(a === b ? [] : [{ kind: 'figure', ...sides(a, b) } as const]),
        ...(alt === newAlt
          ? []
          : [{ kind: 'words', field: 'text alternative', ...sides(alt, newAlt) } as const]),
      ];
    }),
  ];
}

/** What the numbers in a figure mean, in their order. */
const calloutsOf = ({ callouts }: FigureBlock, idOf: (id: string) => string): string =>
  callouts
    .map(
      ({ item, words }, i) =>
        `${i + 1} ${onOneLine(words || (item === undefined ? '' : idOf(item.id)))}`,
    )
    .join(', ');
