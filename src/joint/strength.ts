/** What a property class or a grade says of a bolt's strength. */
export interface Strength {
  /** `class 8.8`, `class A2-70`, `grade 5` */
  readonly name: string;
  readonly isStainless: boolean;
  /** Proof stress in MPa up to a nominal diameter in mm, smallest first; the last holds above it as well. */
  readonly proof: readonly { readonly upTo: number; readonly stress: number }[];
}

/** A class or grade that no standard has. */
export interface StrengthProblem {
  readonly member: 'class' | 'grade';
  readonly known: readonly string[];
  /** The other member, where the text is known there: `grade: 8.8` is a class. */
  readonly belongs?: 'class' | 'grade';
}

export interface ReadStrength {
  readonly value?: Strength;
  readonly problem?: StrengthProblem;
}

/** The stress under proof load in MPa of a bolt of a nominal diameter in mm. */
export function proofStress({ proof }: Strength, diameter: number): number {
  const row = proof.find(({ upTo }) => diameter <= upTo + 1e-9) ?? proof.at(-1);
  return row?.stress ?? 0;
}
