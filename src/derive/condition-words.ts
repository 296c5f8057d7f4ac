import type { ManualSettings } from '../../schemas/manual.ts';
import type { Condition } from '../applicability/index.ts';

type Variants = ManualSettings['variants'];

/** A condition as a sheet prints it, with the manual's names of what its machines differ in: "feed = hydraulic and winch". */
export function conditionWords(condition: Condition, variants: Variants): string {
  const words = (one: Condition): string => conditionWords(one, variants);
  const part = (inner: Condition): string =>
    inner.kind === 'all' || inner.kind === 'any' ? `(${words(inner)})` : words(inner);
  switch (condition.kind) {
    case 'test': {
      const values = condition.values.map((value) => value.text).join(' or ');
      return `${attributeName(variants, condition.attribute.text)} ${condition.negated ? '≠' : '='} ${values}`;
    }
    case 'bare':
      return attributeName(variants, condition.attribute.text);
    case 'found':
      return `“${condition.label}”`;
    case 'never':
      return 'no machine';
    case 'not':
      return condition.of.kind === 'bare'
        ? `${words(condition.of)} = no`
        : `not ${part(condition.of)}`;
    case 'all':
      return condition.of.map(part).join(' and ');
    case 'any':
      return condition.of.map(part).join(' or ');
  }
}

/**
 * For whom a part of a sheet is: "Only for feed = hydraulic", "Only if the belt is cracked", or both. What
 * the technician finds is said in the words in which the sheet asked for it.
 */
export function onlyWords(condition: Condition, variants: Variants): string {
  const parts = condition.kind === 'all' ? condition.of : [condition];
  const found = parts.flatMap((part) => (part.kind === 'found' ? [part.label] : []));
  const others = parts.filter((part) => part.kind !== 'found');
  const machines = joinedWords(others, variants);
  const told = [
    ...(machines === '' ? [] : [`for ${machines}`]),
    ...(found.length === 0 ? [] : [`if ${found.join(' and if ')}`]),
  ];
  return `Only ${told.join(', and only ')}`;
}

/** Conditions that all hold: "feed = hydraulic and (winch or crane)"; empty where there are none. */
export function joinedWords(parts: readonly Condition[], variants: Variants): string {
  const words = parts.map((part) =>
    part.kind === 'any' && parts.length > 1
      ? `(${conditionWords(part, variants)})`
      : conditionWords(part, variants),
  );
  return words.join(' and ');
}

/** What a manual calls one thing in which its machines differ. */
export function attributeName(variants: Variants, id: string): string {
  const variant = Object.hasOwn(variants, id) ? variants[id] : undefined;
  return (Array.isArray(variant) ? undefined : variant?.name) ?? id;
}
