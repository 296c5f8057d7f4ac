import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { type Proof, startProof } from '../../src/command/proof/start-proof.ts';
import { type DemoBench, makeDemoBench } from './demo-bench.ts';
import { filesBelow } from './published.ts';

let demo: DemoBench;
let proof: Proof;

beforeAll(async () => {
  demo = await makeDemoBench();
  proof = await startProof(demo.checked.folder, {
    port: 0,
    editor: undefined,
    onShown: () => undefined,
    onFault: (error) => {
      throw error;
    },
  });
});
afterAll(async () => {
  await proof.close();
  await demo.clear();
});

/** What a page says: without the address of a stylesheet, which names its content where it is published, and blanks at the start. */
function contentOf(html: string): string {
  const main = /<main[\s\S]*<\/main>/.exec(html)?.[0] ?? '';
  return main.replace(/^(<main[^>]*>)\s+/, '$1').replace(/href="[^"]*\.css"/g, 'href="css"');
}

test('every page of the proof of a clean manual says what its published page says', async () => {
  const pages = (await filesBelow(demo.site)).filter((path) => path.endsWith('.html'));
  expect(pages.length).toBeGreaterThan(30);
  for (const path of pages) {
    const published = contentOf(await readFile(join(demo.site, path), 'utf8'));
    const answer = await fetch(proof.address + path);
    expect(answer.status, path).toBe(200);
    expect(published.length, path).toBeGreaterThan(200);
    expect(contentOf(await answer.text()), path).toBe(published);
  }
});

test('every picture and file beside a sheet is handed out as it is published', async () => {
  const files = (await filesBelow(demo.site)).filter((path) =>
    /^(figures|pictures|procedures)\/.*\.(svg|png|jpg|webp|csv|json)$/.test(path),
  );
  expect(files.length).toBeGreaterThan(10);
  for (const path of files) {
    const answer = await fetch(proof.address + path);
    expect(answer.status, path).toBe(200);
    expect(await answer.text(), path).toBe(await readFile(join(demo.site, path), 'utf8'));
  }
});
