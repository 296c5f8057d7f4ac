import fc from 'fast-check';

/** The value so many times out of ten, otherwise nothing. */
export function sometimes<T>(value: fc.Arbitrary<T>, tenths: number): fc.Arbitrary<T | undefined> {
  return fc.oneof(
    { weight: 10 - tenths, arbitrary: fc.constant(undefined) },
    { weight: tenths, arbitrary: value },
  );
}
