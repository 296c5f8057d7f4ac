/// <reference lib="dom" />
import { mkdir, mkdtemp, rename, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { launchBrowser } from '../../src/command/browser.ts';
import { startProof } from '../../src/command/proof/start-proof.ts';
import { generate } from './generate.ts';

// How long from a saved file to the changed page, at 1,000 procedures: `node tests/bench/proof.ts`. The browser and the
// proof share this machine, as they do on a writer's desk; whatever else runs on it is measured too.
const runs = 15;
const { files } = generate(7, { machines: 20, jobs: 46, slips: 0 });
const folder = await mkdtemp(join(tmpdir(), 'tallybolt-bench-'));
for (const { path, text } of files.texts) {
  await mkdir(dirname(join(folder, path)), { recursive: true });
  await writeFile(join(folder, path), text);
}
const id = 'press-4-job-8';
const edited = files.texts.find(({ path }) => path.endsWith(`/${id}.md`));
if (edited === undefined) throw new Error(`the generated manual has no ${id}`);

let shown = { at: 0, check: 0 };
const proof = await startProof(folder, {
  port: 0,
  editor: undefined,
  onShown: (_desk, check) => {
    shown = { at: Date.now(), check };
  },
  onFault: (error) => {
    throw error;
  },
});
process.stdout.write(`first check ${Math.round(shown.check)} ms\n`);
const browser = await launchBrowser();
const page = await browser.newPage({ viewport: { width: 1280, height: 900 } });
await page.goto(`${proof.address}procedures/${id}/`);
await page.evaluate(() => {
  new MutationObserver(() => {
    const found = /Edit(\d+)/.exec(document.querySelector('.work')?.textContent ?? '')?.[1];
    if (found !== undefined && document.body.dataset[`at${found}`] === undefined)
      document.body.dataset[`at${found}`] = String(Date.now());
  }).observe(document.body, { subtree: true, childList: true, characterData: true });
});
const rows: number[][] = [];
for (let run = 1; run <= runs; run += 1) {
  const text = edited.text.replace('Wipe the joint', `Wipe Edit${run} the joint`);
  const file = join(folder, edited.path);
  const start = Date.now();
  // Every second time as editors do that write beside the file and rename.
  if (run % 2 === 0) {
    await writeFile(`${file}~`, text);
    await rename(`${file}~`, file);
  } else await writeFile(file, text);
  const found = await page.waitForFunction((n) => document.body.dataset[`at${n}`], run);
  const end = Number(await found.jsonValue());
  const { at, check } = shown;
  rows.push([end - start, at - start - check, check, end - at]);
  await new Promise((resolve) => setTimeout(resolve, 400));
}
const names = ['save to page', 'watch and read', 'check', 'push, make, morph'];
for (const [i, name] of names.entries()) {
  const sorted = rows.map((row) => row[i] ?? 0).sort((a, b) => a - b);
  const at = (share: number): number => Math.round(sorted[Math.floor(share * runs)] ?? 0);
  process.stdout.write(
    `${name.padEnd(18)} least ${at(0)} ms, median ${at(0.5)} ms, 9 of 10 within ${at(0.9)} ms\n`,
  );
}
await browser.close();
await proof.close();
await rm(folder, { recursive: true, force: true });
