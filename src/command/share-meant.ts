import { InvalidArgumentError } from 'commander';
import { mostShares } from '../../schemas/share-report.ts';
import type { ShareNumber } from '../report/index.ts';

/** Reads `3/8`, the third of eight shares. */
export function shareMeant(words: string): ShareNumber {
  const [, first, second] = /^(\d{1,9})\/(\d{1,9})$/.exec(words.trim()) ?? [];
  if (first === undefined || second === undefined) {
    throw new InvalidArgumentError('Write which share of how many, such as 3/8.');
  }
  const [number, of] = [Number(first), Number(second)];
  if (of < 1 || of > mostShares) {
    throw new InvalidArgumentError(`A manual can be shared out in 1 to ${mostShares} shares.`);
  }
  if (number < 1 || number > of) {
    throw new InvalidArgumentError(
      `There is no share ${number} of ${of}: the first is 1/${of}, the last ${of}/${of}.`,
    );
  }
  return { number, of };
}
