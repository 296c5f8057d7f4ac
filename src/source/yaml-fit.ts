import type { z } from 'zod';
import { dataOf, exactNode, oddNumbers, type YamlNode } from './yaml-node.ts';
import { type PartPattern, partAt, partsReaching } from './yaml-parts.ts';

type Issue = z.core.$ZodIssue;

export interface Fitted<T> {
  readonly value: T | undefined;
  /** All that is wrong with the whole. Messages that are not the schema's own are empty. */
  readonly issues: readonly Issue[];
  readonly dropped: readonly string[];
}

/** Fits a tree to a schema: faulty parts are left out until the rest does, or nothing more can be left out. */
export function fitSchema<S extends z.ZodType>(
  root: YamlNode,
  schema: S,
  patterns: readonly PartPattern[],
  brokenFrom: number | undefined,
): Fitted<z.output<S>> {
  const dropped = new Map<YamlNode, string>();
  const asNumber = new Set<YamlNode>();
  const parse = () =>
    schema.safeParse(dataOf(root, { asNumber, without: dropped }), { error: () => '' });
  let result = parse();
  const odd = issuesOf(result).flatMap((issue) => {
    if (issue.code !== 'invalid_type' && issue.code !== 'invalid_union') return [];
    const node = exactNode(root, issue.path);
    return node ? oddNumbers(node) : [];
  });
  if (odd.length > 0) {
    for (const node of odd) asNumber.add(node);
    result = parse();
  }
  const issues = issuesOf(result);
  if (brokenFrom !== undefined) {
    for (const part of partsReaching(root, patterns, brokenFrom)) dropped.set(part.node, part.path);
    result = parse();
  }
  while (!result.success) {
    const before = dropped.size;
    for (const path of issuesOf(result).flatMap(pathsOf)) {
      const part = partAt(root, patterns, path);
      if (part) dropped.set(part.node, part.path);
    }
    if (dropped.size === before) break;
    result = parse();
  }
  return {
    value: result.success ? result.data : undefined,
    issues,
    dropped: [...new Set(dropped.values())],
  };
}

function issuesOf(result: z.ZodSafeParseResult<unknown>): readonly Issue[] {
  return result.success ? [] : result.error.issues;
}

function pathsOf(issue: Issue): readonly (readonly PropertyKey[])[] {
  return issue.code === 'unrecognized_keys'
    ? issue.keys.map((key) => [...issue.path, key])
    : [issue.path];
}
