import type { Place } from '../../schemas/finding.ts';
import { type Condition, parseCondition, type Space } from '../applicability/index.ts';
import { type Locator, locator } from '../source/index.ts';
import type { Ref } from '../syntax/index.ts';
import type { Mention, Named } from './named.ts';

/** Gathers the mentions of one file. What does not stand in the text as the id itself is left out. */
export class MentionList {
  readonly all: Mention[] = [];
  readonly #locator: Locator;
  readonly #space: Space;

  constructor(file: string, text: string, space: Space) {
    this.#locator = locator(file, text);
    this.#space = space;
  }

  /** The id itself, in quotes or not, at a place. */
  id(named: Named | undefined, place: Place, isDefinition = false): void {
    const exact = named && place.file === this.#locator.file && this.#exact(place, named.id);
    if (named && exact) this.all.push({ named, place: exact, isDefinition, form: 'id' });
  }

  refs(refs: readonly (Ref | undefined)[], named: (id: string) => Named | undefined): void {
    for (const ref of refs) if (ref !== undefined) this.id(named(ref.id), ref.place);
  }

  /** The id inside a longer text at a place, `skip` letters behind where the sign before it begins. */
  within(place: Place, sign: string, skip: number, named: Named): void {
    const { text } = this.#locator;
    const found = text.slice(place.start.offset, place.end.offset).lastIndexOf(sign);
    const start = place.start.offset + found + skip;
    if (found >= 0) this.id(named, this.#locator.place(start, start + named.id.length));
  }

  other(mention: Mention): void {
    this.all.push(mention);
  }

  /** The variants and values that a condition names; `place` is that of the condition, in quotes or not. */
  condition(condition: Condition | undefined, place: Place): void {
    if (condition === undefined || place.file !== this.#locator.file) return;
    const quote = /["']/.test(this.#locator.text[place.start.offset] ?? '') ? 1 : 0;
    this.#tests(condition, place.start.offset + quote);
  }

  written(text: string, place: Place): void {
    this.condition(parseCondition(text).value, place);
  }

  #tests(condition: Condition, from: number): void {
    if (condition.kind === 'all' || condition.kind === 'any') {
      for (const part of condition.of) this.#tests(part, from);
    } else if (condition.kind === 'not') this.#tests(condition.of, from);
    if (condition.kind !== 'test' && condition.kind !== 'bare') return;
    const { attribute } = condition;
    const variant = this.#space.attribute(attribute.text);
    if (variant === undefined) return;
    const at = ({ start, end }: { start: number; end: number }): Place =>
      this.#locator.place(from + start, from + end);
    this.id({ kind: 'variant', id: variant.id }, at(attribute));
    if (condition.kind === 'bare') return;
    for (const value of condition.values) {
      if (variant.values.includes(value.text))
        this.id({ kind: 'value', id: value.text, variant: variant.id }, at(value));
    }
  }

  #exact(place: Place, id: string): Place | undefined {
    const { text } = this.#locator;
    const { offset: start } = place.start;
    const written = text.slice(start, place.end.offset);
    if (written === id) return place;
    const isQuoted = /^(["'])(.*)\1$/s.exec(written)?.[2] === id;
    return isQuoted ? this.#locator.place(start + 1, start + 1 + id.length) : undefined;
  }
}
