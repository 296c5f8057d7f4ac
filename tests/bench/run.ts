import { availableParallelism, cpus } from 'node:os';
import { z } from 'zod';
import type { ManualFiles } from '../../src/source/index.ts';
import { type Asked, askedFor, type Measure, usage } from './asked.ts';
import { editorTimes } from './editor-keystroke.ts';
import { generate } from './generate.ts';
import type { InspectTimes } from './measure-inspect.ts';
import { measurePublish } from './measure-publish.ts';
import { median } from './median.ts';
import { type Program, programFrom } from './program.ts';
import { besides, runProcess } from './run-process.ts';
import { roundsFor, sizeOf } from './sizes.ts';
import { tellHeading, tellRow } from './table.ts';
import { tellGrowth, tellInspect } from './tell-inspect.ts';
import { measureVariants } from './variants.ts';

// What the check and the pages cost, as multiples of only parsing the same Markdown, and of only building as many pages.
// What is set beside something else is measured alike: in fresh processes, in turn, medians. A check that finds anything
// but what was planted ends it.
const asked = askedFor(process.argv.slice(2));
if (asked === undefined) {
  console.error(usage);
  process.exitCode = 2;
} else {
  try {
    await (asked.profile ? profile(asked) : measure(asked));
  } catch (error) {
    console.error(error instanceof Error ? error.message : error);
    process.exitCode = 1;
  }
}

async function profile({ sizes }: Asked): Promise<void> {
  for (const size of sizes)
    console.log((await runProcess(besides('profile.ts'), [String(size)])).out);
}

async function measure({ sizes, named, fromSource, once }: Asked): Promise<void> {
  const program = await programFrom(fromSource);
  const machine = `${availableParallelism()} cores of ${cpus()[0]?.model.trim() ?? 'an unknown kind'}`;
  console.log(`Node ${process.versions.node}, ${machine}; the program ${program.called}\n`);
  const found = new Map<number, InspectTimes>();
  for (const procedures of sizes) {
    const size = sizeOf(procedures);
    const rounds = roundsFor(procedures, once);
    const wants = (one: Measure): boolean =>
      named.includes(one) || (named.length === 0 && (one !== 'publish' || procedures <= 3000));
    const sound = generate(1, { ...size, slips: 0 }).files;
    tellManual(size.machines, sound);
    if (wants('inspect'))
      found.set(procedures, await tellInspect(generate(1, size), program, rounds.check));
    if (wants('proof') || wants('editor'))
      await tellWriting(procedures, sound, wants, found.get(procedures)?.parse);
    console.log('');
    if (wants('publish')) await tellPublish(sound, program, rounds.build);
  }
  tellGrowth(found);
  if (named.length === 0 || named.includes('variants')) measureVariants();
}

function tellManual(machines: number, { texts }: ManualFiles): void {
  const own = texts.filter(({ path }) => path.endsWith('.md'));
  const bytes = own.reduce((sum, { text }) => sum + Buffer.byteLength(text), 0);
  const size = (bytes / own.length / 1000).toFixed(1);
  console.log(`${own.length} procedures of ${size} KB on ${machines} machines`);
}

/** What a writer waits for; `parse` are seconds, where they were measured. */
async function tellWriting(
  procedures: number,
  files: ManualFiles,
  wants: (one: Measure) => boolean,
  parse: number | undefined,
): Promise<void> {
  const tell = (what: string, milliseconds: number): void =>
    tellRow(what, milliseconds, 'ms', parse && milliseconds / 1000 / parse);
  tellHeading('while it is written', parse === undefined ? '' : 'x parse');
  if (wants('proof')) {
    const { out } = await runProcess(besides('proof-edit.ts'), [String(procedures)]);
    const { milliseconds } = z.object({ milliseconds: z.number() }).parse(JSON.parse(out));
    tell('proof, saved file to page', milliseconds);
  }
  if (wants('editor')) {
    const { keystrokes } = await editorTimes(files, 10);
    tell('editor, keystroke to findings', median(keystrokes));
  }
}

async function tellPublish(files: ManualFiles, program: Program, rounds: number): Promise<void> {
  const { bare, publish, peakGB } = await measurePublish(files, program, rounds);
  tellHeading(`whole processes, median of ${rounds}`, 'x build');
  tellRow('bare Astro build of as many pages through remark', bare, 's', 1);
  tellRow('tallybolt publish, search included', publish, 's', publish / bare, 0.6);
  tellRow('most memory of it', peakGB, 'GB');
  console.log('');
}
