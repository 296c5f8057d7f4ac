import { CannotRun } from './cannot-run.ts';

/** For an id that no procedure of the folder has, with the nearest one that there is. */
export function unknownProcedure(id: string, folder: string, near: string | undefined): CannotRun {
  return new CannotRun(
    `There is no procedure ${id} in ${folder}.`,
    near === undefined ? 'Its id stands after `procedure:` in its file.' : `Did you mean ${near}?`,
  );
}
