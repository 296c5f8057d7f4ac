export const measures = ['inspect', 'proof', 'editor', 'publish', 'variants'] as const;
export type Measure = (typeof measures)[number];

/** What the words behind `npm run bench --` ask for. */
export interface Asked {
  readonly sizes: readonly number[];
  /** As named; all where none is. */
  readonly named: readonly Measure[];
  readonly fromSource: boolean;
  /** Each thing is measured once, for a first look. */
  readonly once: boolean;
  /** Only where a cold check spends its time. */
  readonly profile: boolean;
}

export const usage = `npm run bench                 manuals of 100 and 1,000 procedures
npm run bench -- quick        100 only
npm run bench -- 1000         of this size only; any number from 20 on, or several
npm run bench -- all          100, 1,000 and 10,000
  … inspect proof editor publish variants   only what is named; publish of more than 3,000 only where it is named
  … from-source               the program as it stands here, not as it is packed
  … once                      one round of each, not the median of several
npm run bench -- profile      where a cold check of 1,000 (or the size named) spends its time`;

/** Undefined where a word is none of them. */
export function askedFor(words: readonly string[]): Asked | undefined {
  const numbers = words.filter((word) => /^\d+$/.test(word)).map(Number);
  const named = measures.filter((measure) => words.includes(measure));
  const known = ['quick', 'all', 'profile', 'from-source', 'once', ...measures];
  if (words.some((word) => !/^\d+$/.test(word) && !known.some((one) => one === word))) return;
  if (numbers.some((size) => size < 20)) return undefined;
  const profile = words.includes('profile');
  const sizes = words.includes('all')
    ? [100, 1000, 10_000]
    : words.includes('quick')
      ? [100]
      : profile
        ? [1000]
        : [100, 1000];
  return {
    sizes: numbers.length > 0 ? numbers.sort((a, b) => a - b) : sizes,
    named,
    fromSource: words.includes('from-source'),
    once: words.includes('once'),
    profile,
  };
}
