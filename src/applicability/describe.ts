import { type Attribute, type FreshAttribute, isYesNo } from './attribute.ts';
import type { Condition, Found, Name, Span } from './condition.ts';
import { type Cover, coverLength, type Literal, namesPassing } from './cube.ts';
import type { Diagrams } from './diagrams.ts';
import { shortestCover } from './shortest-cover.ts';
import { isPlainName } from './tokens.ts';
import type { VariantSet } from './variant-set.ts';

/**
 * A set in the manual's own words: undefined for everything, `too-long` for a set that takes hundreds of
 * alternatives to tell, where an example (`pick`) and a number (`count`) say more.
 */
export type Description = Condition | 'too-long' | undefined;

const MADE: Span = { start: 0, end: 0 };

/**
 * The shortest condition that holds for all of `on` and nothing of `off`, as alternatives (`… & … | …`) or,
 * where that names less, as demands (`(… | …) & …`).
 */
export function describeSet(
  diagrams: Diagrams,
  attributes: readonly (Attribute | FreshAttribute)[],
  on: VariantSet,
  off: VariantSet,
): Description {
  if (off === diagrams.none) return undefined;
  if (on === diagrams.none) return { kind: 'never', ...MADE };
  const alternatives = shortestCover(diagrams, on, off);
  const exceptions = shortestCover(diagrams, off, on);
  const say = (literal: Literal) => literalCondition(diagrams, attributes, literal);
  const tellExceptions = () =>
    group(
      'all',
      (exceptions ?? []).map((cube) =>
        group(
          'any',
          cube.map((literal) => say(opposite(diagrams, literal))),
        ),
      ),
    );
  if (alternatives === undefined) return exceptions === undefined ? 'too-long' : tellExceptions();
  return exceptions !== undefined && names(diagrams, exceptions) < names(diagrams, alternatives)
    ? tellExceptions()
    : group(
        'any',
        alternatives.map((cube) => group('all', cube.map(say))),
      );
}

function names(diagrams: Diagrams, cover: Cover): number {
  return coverLength(diagrams, cover).names;
}

function opposite(diagrams: Diagrams, { level, values }: Literal): Literal {
  return {
    level,
    values: indexes(diagrams.width(level)).filter((index) => !values.includes(index)),
  };
}

function literalCondition(
  diagrams: Diagrams,
  attributes: readonly (Attribute | FreshAttribute)[],
  literal: Literal,
): Condition {
  const attribute = attributes[literal.level];
  if (attribute === undefined) throw new RangeError(`no attribute stands at ${literal.level}`);
  const passing = namesPassing(diagrams, literal);
  if ('ways' in attribute) return waysCondition(attribute, literal.values, passing);
  const { id, values } = attribute;
  if (isYesNo(attribute) && isPlainName(id)) {
    const bare = { kind: 'bare', attribute: name(id), ...MADE } as const;
    const yes = literal.values.some((index) => values[index] === 'yes');
    return yes ? bare : { kind: 'not', of: bare, ...MADE };
  }
  const named = values.filter((_, index) => literal.values.includes(index) === passing).map(name);
  const [first, ...rest] = named;
  if (first === undefined) throw new RangeError(`a test of “${id}” names no value`);
  return {
    kind: 'test',
    attribute: name(id),
    negated: !passing,
    values: [first, ...rest],
    ...MADE,
  };
}

/** A way with no label is told by the labels of all the others. */
function waysCondition(
  attribute: FreshAttribute,
  passingIndexes: readonly number[],
  passing: boolean,
): Condition {
  const taken = attribute.ways.filter((_, index) => passingIndexes.includes(index));
  const others = attribute.ways.filter((_, index) => !passingIndexes.includes(index));
  const labelled = (ways: typeof taken) => ways.every((way) => way.label !== undefined);
  const found = (ways: typeof taken): readonly Found[] =>
    ways.map(({ value, label = value }) => ({
      kind: 'found',
      label,
      way: { attribute: attribute.id, value },
      ...MADE,
    }));
  if (labelled(taken) && (passing || !labelled(others))) return group('any', found(taken));
  return group(
    'all',
    found(others).map((of) => ({ kind: 'not', of, ...MADE })),
  );
}

/** Groups of the same kind inside are drawn in; of one part nothing but the part is left. */
function group(kind: 'all' | 'any', parts: readonly Condition[]): Condition {
  const flat = parts.flatMap((part) => (part.kind === kind ? part.of : [part]));
  const [first, second, ...rest] = flat;
  if (first === undefined) throw new RangeError('a condition has no part');
  return second === undefined ? first : { kind, of: [first, second, ...rest], ...MADE };
}

function name(text: string): Name {
  return { text, ...MADE };
}

function indexes(width: number): readonly number[] {
  return Array.from({ length: width }, (_, index) => index);
}
