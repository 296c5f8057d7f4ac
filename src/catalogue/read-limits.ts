import type { Limit } from './model.ts';
import type { Reading } from './reading.ts';

/** The limits of an entry: one without a name, or several by name. Those that cannot be read make `limits` faulty. */
export function readLimits(
  limits: string | Readonly<Record<string, string>>,
  path: string,
  reading: Reading,
  faulty: Set<string>,
): readonly Limit[] {
  const at = `${path}.limits`;
  const given: readonly (readonly [string | undefined, string, string])[] =
    typeof limits === 'string'
      ? [[undefined, limits, at]]
      : Object.entries(limits).map(([name, text]) => [name, text, `${at}.${name}`]);
  return given.flatMap(([name, written, where]) => {
    const quantity = reading.anyQuantity(where, written);
    if (quantity === undefined) faulty.add('limits');
    return quantity === undefined
      ? []
      : [{ name, quantity, written, place: reading.written.placeOf(where) }];
  });
}
