import { CannotRun } from './cannot-run.ts';

/** For a condition that no machine meets. */
export function noSuchMachine(words: string): CannotRun {
  return new CannotRun(
    `No machine of this manual is one with ${words}.`,
    'See `variants:` and `never:` in manual.yaml.',
  );
}
