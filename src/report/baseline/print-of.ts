import { sha256 } from '@noble/hashes/sha2.js';
import { bytesToHex, utf8ToBytes } from '@noble/hashes/utils.js';
import type { Finding, Json } from '../../../schemas/finding.ts';
import { compareText } from '../../source/index.ts';

/**
 * By what a finding is known again in a later check, as 32 hexadecimal digits: its rule, procedure (or file), item,
 * variants and facts. Lines may move, words may be put better, and other steps may come or go.
 */
export function printOf({ rule, procedure, file, item, when, data }: Finding): string {
  const home = procedure === undefined ? ['file', file] : ['procedure', procedure];
  const facts = [rule, ...home, item ?? null, when ?? null, steady(data)];
  return bytesToHex(sha256(utf8ToBytes(JSON.stringify(facts).toWellFormed()))).slice(0, 32);
}

/** Facts that tell of the day, or of what else there is to choose from, and not of the fault. */
const passing: ReadonlySet<string> = new Set([
  'choices',
  'comeBack',
  'fitting',
  'known',
  'near',
  'today',
  'usual',
]);

/** The facts without those that pass, keys sorted. */
function steady(value: Json): Json {
  if (Array.isArray(value)) return value.map(steady);
  if (typeof value !== 'object' || value === null) return value;
  return Object.fromEntries(
    Object.entries(value)
      .filter(([key]) => !passing.has(key))
      .sort(([a], [b]) => compareText(a, b))
      .map(([key, inner]) => [key, steady(inner)]),
  );
}
