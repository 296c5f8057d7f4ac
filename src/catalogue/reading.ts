import type { Place } from '../../schemas/finding.ts';
import {
  type Condition,
  type ConditionProblem,
  parseCondition,
  resolveCondition,
  type Space,
} from '../applicability/index.ts';
import { kindOf, parseQuantity, type Quantity, type UnitKind } from '../quantity/index.ts';
import { type Locator, placeWithin } from '../source/index.ts';
import type { CatalogueFact } from './facts.ts';

/** Where entries are written. */
export interface Written {
  readonly locator: Locator;
  /** As `readYaml` gives it. */
  readonly placeOf: (path: string) => Place;
  readonly keyPlaceOf: (path: string) => Place;
}

/** The variants of the manual; `isWhole` is false where some of them may be lost. */
export interface Variants {
  readonly space: Space;
  readonly isWhole: boolean;
}

/** The values of one file as they are read, and what is found wrong with them on the way. */
export class Reading {
  readonly facts: CatalogueFact[] = [];
  readonly written: Written;

  constructor(written: Written) {
    this.written = written;
  }

  /** The quantity at a path; undefined, with the facts told, where it cannot be read or is of another kind. */
  quantity(path: string, text: string, expected: UnitKind, what: string): Quantity | undefined {
    const value = this.anyQuantity(path, text);
    if (value === undefined) return undefined;
    const found = kindOf(value);
    if (found === expected) return value;
    const place = this.written.placeOf(path);
    this.facts.push({ kind: 'unit-wrong-kind', place, written: text, found, expected, what });
    return undefined;
  }

  /** The quantity at a path, of whatever kind; undefined, with the facts told, where it cannot be read. */
  anyQuantity(path: string, text: string): Quantity | undefined {
    const place = this.written.placeOf(path);
    const { value, problems } = parseQuantity(text);
    for (const problem of problems) {
      this.facts.push({
        kind: 'quantity-wrong',
        place: this.within(place, text, problem),
        written: text,
        problem,
      });
    }
    return value;
  }

  /**
   * The condition at a path; undefined, with the facts told, where it cannot be understood. Where variants may be
   * lost, an unknown name says nothing and is not told.
   */
  condition(path: string, text: string, { space, isWhole }: Variants): Condition | undefined {
    const condition = this.syntax(path, text);
    if (condition === undefined) return undefined;
    const { problems } = resolveCondition(space, condition);
    if (isWhole) this.#tell(path, text, problems);
    return problems.every(({ code }) => isConstant(code)) ? condition : undefined;
  }

  /** The condition at a path, its names not looked at. */
  syntax(path: string, text: string): Condition | undefined {
    const { value, problems } = parseCondition(text);
    this.#tell(path, text, problems);
    return value;
  }

  #tell(path: string, written: string, problems: readonly ConditionProblem[]): void {
    const whole = this.written.placeOf(path);
    for (const problem of problems) {
      const place = this.within(whole, written, problem);
      this.facts.push({ kind: 'condition-wrong', place, written, problem });
    }
  }

  /** The place of a stretch of a text that stands at a place. */
  within(
    place: Place,
    text: string,
    stretch: { readonly start: number; readonly end: number },
  ): Place {
    return placeWithin(this.written.locator, place, text, stretch);
  }
}

/** The names are understood, and only the whole is odd. */
function isConstant(code: ConditionProblem['code']): boolean {
  return code === 'always-true' || code === 'never-true';
}
