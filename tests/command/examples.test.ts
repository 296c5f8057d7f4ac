import { existsSync, statSync } from 'node:fs';
import { cp } from 'node:fs/promises';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { commandLine } from '../../src/command/main.ts';
import { helpOf } from '../../src/command/verb-help.ts';
import { type Folder, makeFolder } from './run.ts';
import { makeShell, type Shell } from './shim.ts';

const content = fileURLToPath(new URL('../../content', import.meta.url));
const lines = commandLine(() => {}).commands.flatMap((verb) =>
  (helpOf(verb)?.examples ?? []).filter(({ runs }) => runs !== false).map(({ line }) => line),
);

let folder: Folder;
let shell: Shell;

beforeAll(async () => {
  folder = await makeFolder();
  shell = await makeShell();
  await cp(content, join(folder.path, 'manual'), { recursive: true });
});
afterAll(async () => {
  await folder.remove();
  await shell.remove();
});

describe('the examples of --help, in a folder with the demo manual', () => {
  test.each(lines)('%s', { timeout: 120_000 }, async (line) => {
    const { code, out, err } = await shell.run(line, folder.path);
    expect({ line, code, err }).toEqual({ line, code: 0, err: '' });
    const written = /> (\S+)$/.exec(line)?.[1];
    if (written === undefined) expect(out).toMatch(/\S/);
    else expect(statSync(join(folder.path, written)).size).toBeGreaterThan(0);
    const to = / --(?:to|into) (\S+)/.exec(line)?.[1];
    if (to !== undefined) expect(existsSync(join(folder.path, to))).toBe(true);
  });
});
