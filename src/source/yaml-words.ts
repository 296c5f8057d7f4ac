import type { z } from 'zod';
import type { YamlNode } from './yaml-node.ts';

type Issue = z.core.$ZodIssue;

/** The longest value that a message repeats in full. */
const longestFound = 60;

/**
 * What was expected, in words. The schemas' own messages are such words already; all others arrive empty
 * (`readYaml` silences the library's), and are made here.
 */
export function expectedOf(issue: Issue): string {
  if (issue.message !== '') return issue.message;
  switch (issue.code) {
    case 'invalid_type':
      return typeWords(issue.expected);
    case 'too_small':
      return limitWords(issue.origin, 'at least', issue.minimum, issue.inclusive ?? true);
    case 'too_big':
      return limitWords(issue.origin, 'at most', issue.maximum, issue.inclusive ?? true);
    case 'invalid_format':
      return issue.format === 'url'
        ? 'a web address such as https://example.org/manual'
        : `text of the form ${issue.format}`;
    case 'not_multiple_of':
      return `a multiple of ${issue.divisor}`;
    case 'invalid_value':
      return oneOf(issue.values.map(String));
    case 'unrecognized_keys':
      return 'a known key';
    case 'invalid_key':
      return anyOf(issue.issues.map(expectedOf));
    case 'invalid_element':
      return anyOf(issue.issues.map(expectedOf));
    case 'invalid_union':
      return anyOf(issue.errors.flatMap((branch) => branch.slice(0, 1).map(expectedOf)));
    case 'custom':
      return 'another value';
    default:
      return issue satisfies never;
  }
}

/** The actual value in a few words; nothing for a value that is not there. */
export function foundOf(node: YamlNode | undefined): string | undefined {
  if (!node) return undefined;
  if (node.type === 'list') return node.items.length === 0 ? 'an empty list' : 'a list';
  if (node.type === 'map') return node.entries.size === 0 ? 'an empty map' : 'keys and values';
  if (node.value === null && node.source === '') return 'nothing';
  if (node.source === '') return 'empty text';
  const line = node.source.replace(/\s+/g, ' ').trim();
  return line.length > longestFound ? `${line.slice(0, longestFound - 1)}…` : line;
}

/** "red, green or blue" */
export function oneOf(words: readonly string[]): string {
  const last = words.at(-1) ?? '';
  return words.length < 2 ? last : `${words.slice(0, -1).join(', ')} or ${last}`;
}

function anyOf(words: readonly string[]): string {
  return [...new Set(words)].join(', or ');
}

function typeWords(type: string): string {
  switch (type) {
    case 'string':
      return 'text';
    case 'number':
      return 'a number';
    case 'int':
      return 'a whole number';
    case 'boolean':
      return 'true or false';
    case 'array':
    case 'tuple':
      return 'a list';
    case 'object':
    case 'record':
      return 'keys and values';
    case 'null':
      return 'nothing';
    default:
      return type;
  }
}

function limitWords(
  origin: string,
  side: string,
  limit: number | bigint,
  isInclusive: boolean,
): string {
  const bound = isInclusive
    ? `${side} ${limit}`
    : `${side === 'at least' ? 'more' : 'less'} than ${limit}`;
  switch (origin) {
    case 'string':
      return side === 'at least' && Number(limit) === 1
        ? 'text that is not empty'
        : `text of ${bound} letters`;
    case 'array':
      return `a list of ${bound}`;
    default:
      return `a number of ${bound}`;
  }
}
