import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Generated } from './generate.ts';
import { writeTexts } from './manual-on-disk.ts';
import { type InspectTimes, measureInspect, type State, states } from './measure-inspect.ts';
import type { Program } from './program.ts';
import { tellHeading, tellRow } from './table.ts';

/** At most so many times the plain parse. */
const targets: Readonly<Record<State, number | undefined>> = {
  cold: 0.8,
  warm: 0.03,
  'after an edit': 0.05,
  'after a machine edit': undefined,
};
const mostGB = 1.2;
const mostGrowth = 10.5;

/** Measures the check of a manual and prints the table of it. */
export async function tellInspect(
  generated: Generated,
  program: Program,
  rounds: number,
): Promise<InspectTimes> {
  const folder = mkdtempSync(join(tmpdir(), 'tallybolt-bench-'));
  try {
    writeTexts(folder, generated.files.texts);
    const times = await measureInspect(folder, generated, program, rounds);
    console.log(
      `${generated.planted.length} slips are planted; every check found them all, and nothing else\n`,
    );
    const part = (title: string, parse: number, command: string, check: InspectTimes['check']) => {
      tellHeading(title, 'x parse');
      tellRow('plain remark-parse + remark-directive, one thread', parse, 's', 1);
      for (const state of states) {
        const time = check.get(state) ?? Number.NaN;
        tellRow(`${command}, ${state}`, time, 's', time / parse, targets[state]);
      }
    };
    const loaded = `in a fresh process that has loaded it, median of ${rounds}`;
    part(loaded, times.parse, 'inspect', times.check);
    const whole = `whole processes, from start to end, median of ${rounds}`;
    part(whole, times.parseProcess, 'tallybolt inspect', times.process);
    tellRow('most memory of a cold one, threads included', times.peakGB, 'GB', undefined, mostGB);
    return times;
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

/** What ten times as many procedures cost; nothing where only one of the two sizes was measured. */
export function tellGrowth(found: ReadonlyMap<number, InspectTimes>): void {
  const [small, large] = [found.get(1000), found.get(10_000)];
  if (small === undefined || large === undefined) return;
  const grown = (of: (times: InspectTimes) => number | undefined): number =>
    (of(large) ?? Number.NaN) / (of(small) ?? Number.NaN);
  const cold = grown(({ check }) => check.get('cold'));
  const process = grown((times) => times.process.get('cold'));
  tellHeading('growth from 1,000 to 10,000 procedures', '');
  tellRow(
    'plain parse',
    grown(({ parse }) => parse),
    'x',
  );
  tellRow('inspect, cold', cold, 'x', undefined, mostGrowth);
  tellRow('tallybolt inspect, cold, whole process', process, 'x', undefined, mostGrowth);
  console.log('');
}
