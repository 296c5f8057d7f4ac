import { z } from 'zod';
import { type Baseline, baselineFormat, baselineSchema } from '../../../schemas/baseline.ts';
import { jsonIn, locator, readYaml, type SourceFact } from '../../source/index.ts';

export interface ReadBaseline {
  readonly value: Baseline | undefined;
  /** What is wrong with the file, each with its place in front; empty where there is a value. */
  readonly problems: readonly string[];
}

/** Only the key that says how a baseline is written. */
const formatSchema = z.looseObject({ baseline: z.number() });

/** Reads the text of a baseline. `path` stands in front of each problem. */
export function readBaseline(path: string, text: string): ReadBaseline {
  const parsed = baselineSchema.safeParse(jsonIn(text));
  if (parsed.success) return { value: parsed.data, problems: [] };
  const found = locator(path, text);
  // Being JSON it is YAML as well, whose reader knows the place of everything.
  const yaml = readYaml(found, 0, text.length, baselineSchema);
  if (yaml.value !== undefined && !yaml.isBroken) return { value: yaml.value, problems: [] };
  const format = readYaml(found, 0, text.length, formatSchema);
  const written = format.value?.baseline;
  if (written !== undefined && written !== baselineFormat && !format.isBroken) {
    const { start } = format.placeOf('baseline');
    return {
      value: undefined,
      problems: [
        `${path}:${start.line}:${start.column}: it is written in format ${written}; this version of tallybolt reads format ${baselineFormat}`,
      ],
    };
  }
  return { value: undefined, problems: yaml.facts.map((fact) => wordsOf(fact, path)) };
}

function wordsOf(fact: SourceFact, path: string): string {
  const { start } = fact.place;
  const at = `${path}:${start.line}:${start.column}`;
  if (fact.kind !== 'yaml-shape') return `${at}: it cannot be read: ${fact.reason}`;
  const what = fact.path === '' ? 'the file' : fact.path;
  const found = fact.found === undefined ? 'is not there' : `is ${fact.found}`;
  return `${at}: ${what} ${found}; expected: ${fact.expected}`;
}
