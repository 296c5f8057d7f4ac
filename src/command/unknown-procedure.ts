import { nearest } from '../source/index.ts';
import { CannotRun } from './cannot-run.ts';

/** So many ids still help; more would be a list to search in. */
const most = 5;

/** For an id that no procedure of the folder has, with those of `ids` that may be meant. */
export function unknownProcedure(id: string, folder: string, ids: Iterable<string>): CannotRun {
  const where = folder === '.' ? 'here' : `in ${folder}`;
  return new CannotRun(`There is no procedure ${id} ${where}.`, advice(id, [...ids]));
}

function advice(id: string, ids: readonly string[]): string {
  const near = nearest(id, ids);
  if (near !== undefined) return `Did you mean ${near}?`;
  const words = id.toLowerCase().split(/[^\p{L}\p{N}]+/u);
  const alike = ids
    .map((one) => ({ one, shared: one.split('-').filter((word) => words.includes(word)).length }))
    .filter(({ shared }) => shared > 0)
    .sort((a, b) => b.shared - a.shared || (a.one < b.one ? -1 : 1))
    .map(({ one }) => one);
  if (alike.length === 0) return 'Its id stands after `procedure:` in its file.';
  const [only] = alike;
  return alike.length === 1
    ? `Did you mean ${only}?`
    : `Did you mean one of ${alike.slice(0, most).join(', ')}?`;
}
