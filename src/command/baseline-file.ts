import { readFile } from 'node:fs/promises';
import type { Baseline } from '../../schemas/baseline.ts';
import { readBaseline } from '../report/index.ts';
import { CannotRun } from './cannot-run.ts';
import { reasonOf } from './reason-of.ts';

/** The baseline in a file; undefined where there is no such file. Throws CannotRun where it cannot be relied on. */
export async function baselineIn(path: string): Promise<Baseline | undefined> {
  let text: string;
  try {
    text = new TextDecoder('utf-8', { fatal: true }).decode(await readFile(path));
  } catch (error) {
    if (reasonOf(error) === 'it is gone') return undefined;
    const reason = error instanceof TypeError ? 'it is not UTF-8 text' : reasonOf(error);
    throw new CannotRun(`The baseline ${path} cannot be read: ${reason}.`);
  }
  const { value, problems } = readBaseline(path, text);
  if (value !== undefined) return value;
  throw new CannotRun(
    `The baseline cannot be used.\n${problems.map((problem) => `  ${problem}`).join('\n')}`,
    'Correct it, or bring back an earlier one. It was left as it is.',
  );
}
