/** Chance from a seed: the same numbers on every machine (a linear congruential generator, constants of Knuth's MMIX). */
export interface Chance {
  /** A whole number from `least` to `most`, both included. */
  between(least: number, most: number): number;
  oneOf<T>(choices: readonly [T, ...T[]]): T;
}

export function chanceFrom(seed: number): Chance {
  let state = BigInt.asUintN(64, BigInt(seed) * 2862933555777941757n + 3037000493n);
  const below = (limit: number): number => {
    state = BigInt.asUintN(64, state * 6364136223846793005n + 1442695040888963407n);
    return Number((state >> 33n) % BigInt(limit));
  };
  return {
    between: (least, most) => least + below(most - least + 1),
    oneOf: (choices) => choices[below(choices.length)] ?? choices[0],
  };
}
