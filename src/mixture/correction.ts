/** What brings a mix of two to its share: so much is drained, and as much of one part poured in. */
export interface Correction {
  /** Percent of concentrate by volume, as measured. */
  readonly measured: number;
  readonly pourIn: 'concentrate' | 'water';
  /** As a share of the whole, 0 to 1. */
  readonly replaced: number;
}

/**
 * How much of a full system is drained and replaced to come from one share to another, as a part of its volume. By
 * concentrate, V·(target − now)/(1 − now); by water, V·(now − target)/now. Shares are 0 to 1; undefined where they are
 * not, or where no exchange gets there.
 */
export function replacement(now: number, target: number): number | undefined {
  if (!isShare(now) || !isShare(target)) return undefined;
  if (now === target) return 0;
  if (target > now) return (target - now) / (1 - now);
  return (now - target) / now;
}

const isShare = (share: number): boolean => share >= 0 && share <= 1;

/** The exchange for a measured share, both in percent by volume; undefined where nothing is to be done, or nothing helps. */
export function correctionOf(measured: number, target: number): Correction | undefined {
  const replaced = replacement(measured / 100, target / 100);
  if (replaced === undefined || replaced === 0) return undefined;
  return { measured, pourIn: target > measured ? 'concentrate' : 'water', replaced };
}
