import type { Change } from '../../schemas/redline.ts';

/** A change before it has words and a risk. */
export type Fact = Omit<Change, 'risk' | 'message'>;

/** What changed, without where: the reader of the place adds that. */
export type Shift = Pick<Fact, 'kind'> &
  Partial<Pick<Fact, 'field' | 'before' | 'after' | 'direction' | 'verb' | 'item' | 'name'>>;

/** Both sides of a shift; a side that says nothing is left out. */
export function sides(
  before: string | undefined,
  after: string | undefined,
): Pick<Shift, 'before' | 'after'> {
  return {
    ...(before === undefined || before === '' ? {} : { before }),
    ...(after === undefined || after === '' ? {} : { after }),
  };
}
