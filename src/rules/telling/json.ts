import type { Json } from '../../../schemas/finding.ts';

/** Plain facts as JSON: what is undefined is left out, and places too, since a finding has them in `related`. */
export function jsonOf(value: unknown): Json {
  return convert(value) ?? null;
}

/** The facts of an object, without some of its members. */
export function factsOf(fact: object, without: readonly string[] = []): Record<string, Json> {
  const data: Record<string, Json> = {};
  for (const [key, value] of Object.entries(fact)) {
    if (without.includes(key)) continue;
    const json = convert(value);
    if (json !== undefined) data[key] = json;
  }
  return data;
}

function convert(value: unknown): Json | undefined {
  if (value === null || typeof value === 'string' || typeof value === 'boolean') return value;
  if (typeof value === 'number') return Number.isFinite(value) ? value : null;
  if (Array.isArray(value)) {
    return value.flatMap((one: unknown) => {
      const json = convert(one);
      return json === undefined ? [] : [json];
    });
  }
  if (typeof value !== 'object' || isPlace(value)) return undefined;
  return factsOf(value);
}

const isPlace = (value: object): boolean => 'file' in value && 'start' in value && 'end' in value;
