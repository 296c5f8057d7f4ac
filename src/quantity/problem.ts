import type { UnitId } from './unit.ts';
import type { UnitKind } from './unit-kind.ts';

/** A stretch of the text that was parsed: offsets in UTF-16 units, end not included. */
export type Stretch = { readonly start: number; readonly end: number };

/** Whatever can be wrong with a written quantity. Facts only; describeProblem finds the words. */
export type QuantityProblem = Stretch & QuantityFault;

export type QuantityFault =
  | { readonly code: 'unit-missing'; readonly number: string }
  | { readonly code: 'unit-unknown'; readonly written: string; readonly near: readonly UnitId[] }
  | {
      readonly code: 'unit-ambiguous';
      readonly written: string;
      readonly choices: readonly [UnitId, UnitId, ...UnitId[]];
    }
  /** Understood; the value is returned. */
  | { readonly code: 'unit-spelling'; readonly written: string; readonly standard: UnitId }
  | { readonly code: 'number-unreadable'; readonly written: string }
  /** Understood; the value is returned. */
  | { readonly code: 'number-spelling'; readonly written: string; readonly standard: string }
  | {
      readonly code: 'decimal-comma';
      readonly written: string;
      readonly instead: readonly string[];
    }
  | { readonly code: 'vulgar-fraction'; readonly written: string; readonly instead: string }
  | { readonly code: 'negative'; readonly written: string; readonly kind: UnitKind }
  | { readonly code: 'range-reversed'; readonly low: string; readonly high: string }
  | { readonly code: 'two-units'; readonly first: UnitId; readonly second: UnitId }
  | { readonly code: 'angle-misplaced'; readonly first: UnitKind; readonly second: UnitKind }
  | { readonly code: 'limit-of-several'; readonly limit: 'max' | 'min' }
  | { readonly code: 'share-of-temperature' }
  /** `1 h 30 min`; `instead` is the same in one unit. */
  | { readonly code: 'compound'; readonly written: string; readonly instead: string }
  /** One value in two units: `22 N·m (16 lbf·ft)`. Of this and the next four, `instead` is what to write. */
  | { readonly code: 'doubled'; readonly written: string; readonly instead: string }
  /** `60 N·m then 90°` */
  | { readonly code: 'stages'; readonly written: string; readonly instead: string }
  /** `22 +2/-1 N·m` */
  | { readonly code: 'unequal-tolerance'; readonly written: string; readonly instead: string }
  /** `about 22 N·m` */
  | { readonly code: 'approximate'; readonly written: string; readonly instead: string }
  /** `up to 5 bar`, `between 20 and 24 N·m` */
  | { readonly code: 'other-words'; readonly written: string; readonly instead: string }
  | { readonly code: 'left-over'; readonly written: string };

/** Whether a value stands in spite of the problem, because only its spelling is at fault. */
export function isOnlySpelling({ code }: QuantityFault): boolean {
  return code === 'unit-spelling' || code === 'number-spelling';
}
