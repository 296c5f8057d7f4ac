import type { z } from 'zod';
import type { Place } from '../../schemas/finding.ts';
import type { SourceFact } from './facts.ts';
import type { Locator } from './place.ts';
import { fitSchema } from './yaml-fit.ts';
import { keySpanOf, nodeAt, type Span, spanOf } from './yaml-node.ts';
import { shapeFacts } from './yaml-shape.ts';
import { yamlTree } from './yaml-tree.ts';

export interface Yaml<T> {
  /** What the schema makes of it; undefined where what is left without the faulty parts does not do. */
  readonly value: T | undefined;
  readonly facts: readonly SourceFact[];
  /**
   * Place of the value at a path such as `fasteners.anvil-bolt.torque`; of the key, where the value is a
   * block of lines or missing; else of the nearest parent, at last of the start.
   */
  readonly placeOf: (path: string) => Place;
  readonly keyPlaceOf: (path: string) => Place;
  /** Paths of the parts that were left out of the value because they are faulty. */
  readonly dropped: readonly string[];
  /** True where the text breaks off being YAML: what stands behind the first such place is dropped or lost. */
  readonly isBroken: boolean;
}

/**
 * Reads the YAML between two offsets of a text by a schema. Never throws.
 *
 * `parts` names the entries that stand for themselves, `*` for any key (`fasteners.*`): a fault in one costs
 * that one alone, and the value has the others. Without `parts` a fault costs the value.
 */
export function readYaml<S extends z.ZodType>(
  locator: Locator,
  start: number,
  end: number,
  schema: S,
  parts: readonly string[] = [],
): Yaml<z.output<S>> {
  const place = (span: Span): Place => locator.place(span.start, span.end);
  const { root, faults } = yamlTree(locator, start, end);
  const brokenFrom = faults.find(({ isFatal }) => isFatal)?.start;
  const patterns = parts.map((part) => part.split('.'));
  const { value, issues, dropped } = fitSchema(root, schema, patterns, brokenFrom);
  const broken = faults.map(
    (fault): SourceFact => ({ kind: 'yaml-broken', place: place(fault), reason: fault.reason }),
  );
  // What is missing or odd in a broken text is mostly the break itself, and is not told again.
  const shape = brokenFrom === undefined ? shapeFacts(issues, schema, root, place) : [];
  return {
    value,
    facts: [...broken, ...shape],
    placeOf: (path) => place(spanOf(nodeAt(root, stepsOf(path)))),
    keyPlaceOf: (path) => place(keySpanOf(nodeAt(root, stepsOf(path)))),
    dropped,
    isBroken: brokenFrom !== undefined,
  };
}

function stepsOf(path: string): string[] {
  return path === '' ? [] : path.split('.');
}
