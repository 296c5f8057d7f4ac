import { fileURLToPath } from 'node:url';
import { beforeAll, describe, expect, test } from 'vitest';
import { inspect } from '../../src/report/index.ts';
import type { CheckedManual } from './checked-manual.ts';
import { mutantsOf } from './mutants.ts';
import { deleteAction } from './operators/delete-action.ts';
import { stateAsItIs } from './operators/index.ts';
import { tableOf } from './table.ts';
import { type Trial, tryMutants } from './trial.ts';

const folders = ['content', 'tests/manuals/lathe', 'tests/manuals/hand-pump'] as const;
const trials: Trial[] = [];

beforeAll(async () => {
  for (const folder of folders) {
    trials.push(await tryMutants(fileURLToPath(new URL(`../../${folder}`, import.meta.url))));
  }
}, 300_000);

describe.each(folders.map((folder, i) => ({ folder, i })))('$folder', ({ i }) => {
  const trial = (): Trial => {
    const found = trials[i];
    if (found === undefined) throw new Error('this manual has not been tried');
    return found;
  };

  test('raises no alarm as it is', () => {
    const { manual } = trial();
    expect(graveIn(manual)).toEqual([]);
    for (const { path, text } of manual.files.texts.filter(isProcedure))
      expect(manual.found(path, text)).toEqual([]);
  });

  test('has no survivor without a reason', () => {
    const unexplained = trial().outcomes.filter(
      ({ isKilled, reason }) => !isKilled && reason === undefined,
    );
    expect(unexplained.map(({ mutant }) => wordsOf(mutant))).toEqual([]);
  });

  test('changes that are no faults raise no alarm', () => {
    const { manual } = trial();
    const harmless = [stateAsItIs, deleteAction('delete a check', ['check'])];
    const alarms = [...mutantsOf(manual.linked, harmless)].filter(
      ({ file, text }) => manual.found(file, text).length > 0,
    );
    expect(alarms.map(wordsOf)).toEqual([]);
  });

  test('the short way to the verdict agrees with the whole check', () => {
    const { manual, outcomes } = trial();
    const sample = outcomes.filter((_, at) => at % Math.ceil(outcomes.length / 8) === 0);
    const survivors = outcomes.filter(({ isKilled }) => !isKilled).slice(0, 3);
    for (const { mutant, isKilled } of [...sample, ...survivors]) {
      const grave = graveIn(manual, mutant.file, mutant.text);
      expect({ mutant: wordsOf(mutant), isKilled: grave.length > 0 }).toEqual({
        mutant: wordsOf(mutant),
        isKilled,
      });
    }
  });
});

test('the table is up to date: `npx vitest run tests/mutation -u` writes it', async () => {
  const table = tableOf(trials);
  console.log(table.slice(0, table.indexOf('\n## ')));
  await expect(table).toMatchFileSnapshot('TABLE.md');
});

function graveIn({ files }: CheckedManual, path?: string, text = '') {
  const texts = files.texts.map((one) => (one.path === path ? { path: one.path, text } : one));
  const { findings } = inspect({ ...files, texts }, '0.0.0').report;
  return findings.filter(({ level }) => level !== 'note');
}

const isProcedure = ({ path }: { path: string }): boolean => path.startsWith('procedures/');

const wordsOf = (mutant: { operator: string; procedure: string; words: string }): string =>
  `${mutant.operator}, ${mutant.procedure}: ${mutant.words}`;
