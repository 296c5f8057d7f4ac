import { isMeasureOf, kindOf, mostOf, type Single, type UnitKind } from '../quantity/index.ts';
import { nearest } from '../source/index.ts';
import type { Containers } from './model.ts';
import type { Reading } from './reading.ts';

type Written = readonly string[] | Readonly<Record<string, readonly string[]>>;

/**
 * The sizes that an entry is sold in: of the whole, or of each fluid of a mix. All sizes of one list are of
 * one kind, volume where only that can be; those that are not are told and left out.
 */
export function readContainers(
  containers: Written | undefined,
  path: string,
  reading: Reading,
  { mix, kind }: { readonly mix: readonly string[]; readonly kind: UnitKind | undefined },
): readonly Containers[] {
  const at = `${path}.containers`;
  if (containers === undefined) return [];
  if (isList(containers)) return [{ of: undefined, sizes: sizesOf(containers, at, reading, kind) }];
  return Object.entries(containers).map(([of, texts]) => {
    if (!mix.includes(of)) {
      const near = nearest(of, mix);
      reading.facts.push({
        kind: 'container-wrong',
        place: reading.written.keyPlaceOf(`${at}.${of}`),
        written: of,
        problem: 'not-in-mix',
        known: mix,
        ...(near === undefined ? {} : { near }),
      });
    }
    return { of, sizes: sizesOf(texts, `${at}.${of}`, reading, kind) };
  });
}

const isList = (containers: Written): containers is readonly string[] => Array.isArray(containers);

function sizesOf(
  texts: readonly string[],
  path: string,
  reading: Reading,
  kind: UnitKind | undefined,
): readonly Single[] {
  let expected = kind;
  return texts.flatMap((written, i) => {
    const where = `${path}.${i}`;
    const what = 'the size of a container';
    const value =
      expected === undefined
        ? reading.anyQuantity(where, written)
        : reading.quantity(where, written, expected, what);
    if (value === undefined) return [];
    const isSold = isMeasureOf(value, 'volume') || isMeasureOf(value, 'mass');
    if (!isSold || value.form !== 'single' || mostOf(value).n <= 0n) {
      const place = reading.written.placeOf(where);
      reading.facts.push({
        kind: 'container-wrong',
        place,
        written,
        problem: 'no-size',
        known: [],
      });
      return [];
    }
    expected ??= kindOf(value);
    return [value];
  });
}
