import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { startProof } from '../../src/command/proof/start-proof.ts';
import { generate } from './generate.ts';
import { writeTexts } from './manual-on-disk.ts';
import { median } from './median.ts';
import { sizeOf } from './sizes.ts';

// Runs in a process of its own: from a saved file to the page that the proof hands out with it. What a browser does with
// the page comes on top; `proof.ts` measures that.
const rounds = 15;
const { files } = generate(1, { ...sizeOf(Number(process.argv[2])), slips: 0 });
const jobs = files.texts.filter(({ path }) => path.includes('-job-'));
const own = jobs[Math.floor(jobs.length / 2)];
if (own === undefined) throw new Error('the manual has no job');
const id = own.path.replace(/^.*\/|\.md$/g, '');
const folder = mkdtempSync(join(tmpdir(), 'tallybolt-bench-'));
writeTexts(folder, files.texts);
let shown = (): void => {};
const proof = await startProof(folder, {
  port: 0,
  editor: undefined,
  onShown: () => shown(),
  onFault: (fault) => {
    throw fault;
  },
});
try {
  const text = readFileSync(join(folder, own.path), 'utf8');
  const milliseconds: number[] = [];
  for (let round = 0; round <= rounds; round += 1) {
    const isShown = new Promise<void>((resolve) => {
      shown = resolve;
    });
    const begun = performance.now();
    writeFileSync(
      join(folder, own.path),
      text.replace('After the first', `Edit${round}. After the first`),
    );
    await isShown;
    const page = await (await fetch(`${proof.address}procedures/${id}/`)).text();
    if (!page.includes(`Edit${round}.`)) throw new Error(`the page of ${id} has no edit ${round}`);
    // The first page waits for all that is loaded for pages.
    if (round > 0) milliseconds.push(performance.now() - begun);
    await new Promise((resolve) => setTimeout(resolve, 200));
  }
  console.log(JSON.stringify({ milliseconds: median(milliseconds) }));
} finally {
  await proof.close();
  rmSync(folder, { recursive: true, force: true });
}
