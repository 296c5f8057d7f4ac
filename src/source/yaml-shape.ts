import type { z } from 'zod';
import type { Place } from '../../schemas/finding.ts';
import { commaValues } from './decimal-comma.ts';
import type { SourceFact } from './facts.ts';
import { nearest } from './near.ts';
import { exactNode, keySpanOf, nodeAt, type Span, spanOf, type YamlNode } from './yaml-node.ts';
import { keysOf, optionsOf, schemaAt } from './yaml-schema.ts';
import { expectedOf, foundOf, oneOf } from './yaml-words.ts';

type Issue = z.core.$ZodIssue;
type Schema = z.core.$ZodType;
type Path = readonly PropertyKey[];
type ShapeFact = Extract<SourceFact, { kind: 'yaml-shape' }>;

interface Shaping {
  readonly root: YamlNode;
  readonly place: (span: Span) => Place;
}

/** What the schema found wrong, as facts about the author's text, in order of place. */
export function shapeFacts(
  issues: readonly Issue[],
  schema: Schema,
  root: YamlNode,
  place: (span: Span) => Place,
): ShapeFact[] {
  const shaping: Shaping = { root, place };
  const facts = withoutMisspelt(issues.flatMap((issue) => factsOf(issue, schema, [], shaping)));
  return withDecimalCommas(facts, shaping).sort(
    (a, b) =>
      a.place.start.offset - b.place.start.offset || a.place.end.offset - b.place.end.offset,
  );
}

/** All that a decimal comma in braces brings about is one slip, so one fact. */
function withDecimalCommas(facts: readonly ShapeFact[], { root, place }: Shaping): ShapeFact[] {
  const values = facts.length === 0 ? [] : commaValues(root);
  const isIn = ({ start, end }: Span, fact: ShapeFact): boolean =>
    fact.place.start.offset >= start && fact.place.end.offset <= end;
  const others = facts.filter((fact) => !values.some((value) => isIn(value, fact)));
  const commas = values
    .filter((value) => facts.some((fact) => isIn(value, fact)))
    .map(
      (value): ShapeFact => ({
        kind: 'yaml-shape',
        place: place(value),
        path: value.path,
        expected: decimalPoint,
        found: value.written,
        near: value.written.replace(/(?<=\d),(?=\d)/g, '.'),
      }),
    );
  return [...others, ...commas];
}

const decimalPoint = 'a decimal point (a comma inside { } begins a new key)';

/** `schema` is the one of the value at `base`; the path of the issue goes on from there. */
function factsOf(issue: Issue, schema: Schema, base: Path, shaping: Shaping): ShapeFact[] {
  const path = [...base, ...issue.path];
  const here = schemaAt(schema, issue.path);
  switch (issue.code) {
    case 'unrecognized_keys':
      return issue.keys.map((key) =>
        unknownKey([...path, key], key, here ? keysOf(here) : [], shaping),
      );
    case 'invalid_union':
      return issue.errors.length > 0
        ? unionFacts(issue, here, path, shaping)
        : [plainFact(issue, path, shaping)];
    case 'invalid_key':
      return [keyFact(issue, path, shaping)];
    case 'invalid_value': {
      const fact = plainFact(issue, path, shaping);
      const near = nearest(fact.found ?? '', issue.values.map(String));
      return [near === undefined ? fact : { ...fact, near }];
    }
    case 'invalid_type':
    case 'invalid_format':
    case 'invalid_element':
    case 'not_multiple_of':
    case 'too_big':
    case 'too_small':
    case 'custom':
      return [plainFact(issue, path, shaping)];
    default:
      return issue satisfies never;
  }
}

function plainFact(issue: Issue, path: Path, { root, place }: Shaping): ShapeFact {
  const found = foundOf(exactNode(root, path));
  return {
    kind: 'yaml-shape',
    place: place(spanOf(nodeAt(root, path))),
    path: path.map(String).join('.'),
    expected: expectedOf(issue),
    ...(found === undefined ? {} : { found }),
  };
}

function keyFact(issue: Issue, path: Path, shaping: Shaping): ShapeFact {
  const node = nodeAt(shaping.root, path);
  const found = String(path.at(-1) ?? '');
  return { ...plainFact(issue, path, shaping), place: shaping.place(keySpanOf(node)), found };
}

function unknownKey(
  path: Path,
  key: string,
  allowed: readonly string[],
  { root, place }: Shaping,
): ShapeFact {
  const near = nearest(key, allowed);
  return {
    kind: 'yaml-shape',
    place: place(keySpanOf(nodeAt(root, path))),
    path: path.map(String).join('.'),
    expected: near === undefined ? keyWords(allowed) : `the key ${near}`,
    found: key,
    ...(near === undefined ? {} : { near }),
  };
}

function keyWords(allowed: readonly string[]): string {
  return allowed.length === 0 ? 'no key here' : `a key of ${oneOf(allowed)}`;
}

/** Of the ways in which a value may be written, the one that the author most likely meant. */
function unionFacts(
  issue: Extract<Issue, { code: 'invalid_union' }>,
  schema: Schema | undefined,
  path: Path,
  shaping: Shaping,
): ShapeFact[] {
  const options = schema ? optionsOf(schema) : [];
  const branches = issue.errors.map((issues, index) => ({ issues, option: options[index] }));
  const fitting = branches.filter(({ issues }) => !issues.some(isOtherType));
  const fewest = Math.min(...fitting.map(({ issues }) => issues.length));
  const best = fitting.filter(({ issues }) => issues.length === fewest);
  const [only] = best;
  if (only?.option && best.length === 1) {
    const { option } = only;
    return only.issues.flatMap((inner) => factsOf(inner, option, path, shaping));
  }
  const unknown = best.flatMap(({ issues }) => issues.flatMap(unknownKeys));
  if (unknown.length > 0) {
    const allowed = [...new Set(best.flatMap(({ option }) => (option ? keysOf(option) : [])))];
    return [...new Set(unknown)].map((key) => unknownKey([...path, key], key, allowed, shaping));
  }
  return [plainFact(issue, path, shaping)];
}

/** The value is not even of the type of this branch. */
function isOtherType(issue: Issue): boolean {
  return issue.code === 'invalid_type' && issue.path.length === 0;
}

function unknownKeys(issue: Issue): string[] {
  return issue.code === 'unrecognized_keys' && issue.path.length === 0 ? issue.keys : [];
}

/** A key that is missing because it is misspelt beside is one slip, so one fact. */
function withoutMisspelt(facts: readonly ShapeFact[]): ShapeFact[] {
  const meant = new Set(
    facts.flatMap(({ path, near, found }) =>
      near !== undefined && found !== undefined && path.endsWith(found)
        ? [path.slice(0, -found.length) + near]
        : [],
    ),
  );
  return facts.filter(({ path, found }) => found !== undefined || !meant.has(path));
}
