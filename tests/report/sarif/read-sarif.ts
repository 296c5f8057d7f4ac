import { readFileSync } from 'node:fs';
import { Ajv } from 'ajv';
import formats from 'ajv-formats';
import type { Log, Result, Run } from 'sarif';

const {
  $schema: _,
  id: __,
  ...schema
} = JSON.parse(readFileSync(new URL('sarif-2.1.0.schema.json', import.meta.url), 'utf8'));

// It is of draft 4; of what changed after that it uses nothing but `id`, so that a reader of draft 7 takes it.
// One of its patterns is none under the u flag.
const ajv = new Ajv({ strict: false, allErrors: true, unicodeRegExp: false });
formats.default(ajv);
const fits = ajv.compile<Log>(schema);

/** What is wrong with a log by the schema of SARIF 2.1.0. */
export function faultsOf(log: unknown): string[] {
  fits(log);
  return (fits.errors ?? []).map(({ instancePath, message }) => `${instancePath} ${message}`);
}

/** The only run of a log, which must fit the schema. */
export function runIn(text: string): Run & { results: Result[] } {
  const log: unknown = JSON.parse(text);
  if (!fits(log)) throw new Error(faultsOf(log).join('\n'));
  const [run] = log.runs;
  if (run?.results === undefined) throw new Error('there are no results');
  return { ...run, results: run.results };
}
