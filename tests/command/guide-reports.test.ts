import { readFileSync } from 'node:fs';
import { cp } from 'node:fs/promises';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { manualFolders } from '../manuals/manual-from.ts';
import { type Folder, makeFolder } from './run.ts';
import { makeShell, type Shell } from './shim.ts';

const chapter = new URL('../../site/guide/10-reports-and-baseline.md', import.meta.url);
const lines = [...readFileSync(chapter, 'utf8').matchAll(/^ {4}(tallybolt .+)$/gm)].map(
  ([, line = '']) => line,
);

let folder: Folder;
let shell: Shell;
beforeAll(async () => {
  folder = await makeFolder();
  shell = await makeShell();
  await cp(manualFolders.demo, join(folder.path, 'manual'), { recursive: true });
});
afterAll(async () => {
  await folder.remove();
  await shell.remove();
});

test('the lines of the chapter on reports run one after another', async () => {
  expect(lines.length).toBeGreaterThan(2);
  for (const line of lines) {
    const { code, err } = await shell.run(line, folder.path);
    expect({ line, code, err }).toEqual({ line, code: 0, err: '' });
  }
});
