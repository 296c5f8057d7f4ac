import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { z } from 'zod';
import { type Report, reportSchema } from '../../schemas/report.ts';
import type { Generated } from './generate.ts';
import { median } from './median.ts';
import { differences, type Planted } from './planted.ts';
import type { Program } from './program.ts';
import { besides, runProcess } from './run-process.ts';

export const states = ['cold', 'warm', 'after an edit', 'after a machine edit'] as const;
export type State = (typeof states)[number];

/** Medians in seconds. */
export interface InspectTimes {
  /** Only parsing, and the whole process that does it. */
  readonly parse: number;
  readonly parseProcess: number;
  /** The check as the command does it, in a process that has just loaded it. */
  readonly check: ReadonlyMap<State, number>;
  /** The command, from its start to its end. */
  readonly process: ReadonlyMap<State, number>;
  /** The most that a cold command held, with its threads. */
  readonly peakGB: number;
}

const parsed = z.object({ seconds: z.number(), nodes: z.number().positive() });
const checked = z.object({ seconds: z.number(), looked: z.number(), report: reportSchema });

/**
 * Measures the check of a manual in `folder`, everything in fresh processes, in turn, so that a slow moment of the
 * machine meets all alike. Throws where a check finds anything but what was planted.
 */
export async function measureInspect(
  folder: string,
  { files, planted }: Generated,
  { check: module, command }: Program,
  rounds: number,
): Promise<InspectTimes> {
  const times = new Map<string, number[]>();
  const keep = (name: string, seconds: number): void => {
    times.set(name, [...(times.get(name) ?? []), seconds]);
  };
  const procedures = files.texts.filter(({ path }) => path.endsWith('.md')).length;
  const procedure = texts('.md')[Math.floor(procedures / 2)] ?? '';
  const machine = texts('.yaml').find((path) => path.startsWith('machines/')) ?? '';

  for (let round = 1; round <= rounds; round += 1) {
    const plain = await runProcess(besides('fresh-parse.ts'), [folder]);
    keep('parse', parsed.parse(JSON.parse(plain.out)).seconds);
    keep('parse process', plain.seconds);
    await inEachState(round, async (state, keepIn) => {
      const { out } = await runProcess(besides('fresh-check.ts'), [module, folder, keepIn]);
      const { seconds, looked, report } = checked.parse(JSON.parse(out));
      refuse(planted, report, procedures);
      if (state === 'warm' && looked > 0) throw new Error(`a warm check looked at ${looked} parts`);
      if (state === 'cold' && looked < procedures) throw new Error(`cold, it looked at ${looked}`);
      keep(state, seconds);
    });
    await inEachState(round + rounds, async (state, keepIn) => {
      const words = ['inspect', folder, '--keep-in', keepIn, '--format', 'json'];
      const { out, seconds, peakGB } = await runProcess(command, words, [0, 1]);
      refuse(planted, reportSchema.parse(JSON.parse(out)), procedures);
      keep(`process ${state}`, seconds);
      if (state === 'cold') keep('peak', peakGB);
    });
  }
  const of = (name: string): number => median(times.get(name) ?? []);
  return {
    parse: of('parse'),
    parseProcess: of('parse process'),
    check: new Map(states.map((state) => [state, of(state)])),
    process: new Map(states.map((state) => [state, of(`process ${state}`)])),
    peakGB: of('peak'),
  };

  function texts(ending: string): readonly string[] {
    return files.texts.map(({ path }) => path).filter((path) => path.endsWith(ending));
  }

  /** `edition` makes edits that were not made before. The files are as they were afterwards. */
  async function inEachState(
    edition: number,
    work: (state: State, keepIn: string) => Promise<void>,
  ): Promise<void> {
    const keepIn = mkdtempSync(join(tmpdir(), 'tallybolt-bench-kept-'));
    try {
      await work('cold', keepIn);
      await work('warm', keepIn);
      await whileEdited(
        procedure,
        (text) => `${text}\nEdition ${edition}.\n`,
        () => work('after an edit', keepIn),
      );
      // The store is of the manual with that edit: it is taken back before the next one is measured.
      await runProcess(command, ['inspect', folder, '--keep-in', keepIn], [0, 1]);
      await whileEdited(
        machine,
        (text) => text.replace('capacity: 20 L', `capacity: ${20 + edition} L`),
        () => work('after a machine edit', keepIn),
      );
    } finally {
      rmSync(keepIn, { recursive: true });
    }
  }

  async function whileEdited(
    path: string,
    edit: (text: string) => string,
    work: () => Promise<void>,
  ): Promise<void> {
    const file = join(folder, path);
    const text = readFileSync(file, 'utf8');
    if (edit(text) === text) throw new Error(`${path} has nothing to edit`);
    writeFileSync(file, edit(text));
    try {
      await work();
    } finally {
      writeFileSync(file, text);
    }
  }
}

function refuse(planted: readonly Planted[], report: Report, procedures: number): void {
  const { missed, more } = differences(planted, report.findings);
  if (missed.length + more.length > 0)
    throw new Error(
      [
        'The check is not right.',
        `missed: ${missed.join('; ')}`,
        `beside: ${more.join('; ')}`,
      ].join('\n'),
    );
  if (report.manual.procedures !== procedures)
    throw new Error(`${report.manual.procedures} of ${procedures} procedures were checked`);
}
