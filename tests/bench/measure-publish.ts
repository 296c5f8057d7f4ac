import { globSync, mkdirSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { ManualFiles } from '../../src/source/index.ts';
import { writeTexts } from './manual-on-disk.ts';
import { median } from './median.ts';
import { plainPage } from './plain-page.ts';
import type { Program } from './program.ts';
import { besides, runProcess } from './run-process.ts';

/** Medians, of whole processes. */
export interface PublishTimes {
  /** Astro alone, of as many plain pages. */
  readonly bare: number;
  readonly publish: number;
  readonly peakGB: number;
}

/** Measures `publish` of a sound manual beside a build of the same words as plain pages, in turn. */
export async function measurePublish(
  files: ManualFiles,
  { command }: Program,
  rounds: number,
): Promise<PublishTimes> {
  const procedures = files.texts.filter(({ path }) => path.endsWith('.md'));
  const folder = mkdtempSync(join(tmpdir(), 'tallybolt-bench-'));
  const [manual, bare] = [join(folder, 'manual'), join(folder, 'bare')];
  try {
    writeTexts(manual, files.texts);
    writeTexts(
      join(bare, 'src/pages'),
      procedures.map((file) => ({ path: file.path, text: plainPage(file) })),
    );
    writeFileSync(join(bare, 'package.json'), '{ "type": "module" }\n');
    const packages = fileURLToPath(new URL('../../node_modules', import.meta.url));
    symlinkSync(packages, join(bare, 'node_modules'), 'junction');
    const times = { bare: [] as number[], publish: [] as number[], peak: [] as number[] };
    for (let round = 1; round <= rounds; round += 1) {
      mkdirSync(join(folder, 'out'));
      rmSync(join(bare, 'dist'), { recursive: true, force: true });
      times.bare.push((await runProcess(besides('bare-build.ts'), [bare])).seconds);
      refuseFewer(join(bare, 'dist/procedures'), procedures.length);
      const out = join(folder, 'out');
      const { seconds, peakGB } = await runProcess(command, ['publish', manual, '--to', out]);
      refuseFewer(join(out, 'procedures'), procedures.length);
      times.publish.push(seconds);
      times.peak.push(peakGB);
      rmSync(out, { recursive: true });
    }
    return {
      bare: median(times.bare),
      publish: median(times.publish),
      peakGB: median(times.peak),
    };
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

function refuseFewer(folder: string, wanted: number): void {
  const pages = globSync('**/index.html', { cwd: folder }).length;
  if (pages < wanted) throw new Error(`${folder} has ${pages} pages of ${wanted}`);
}
