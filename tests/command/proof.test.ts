import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { mkdtemp, readdir, readFile, rm, writeFile } from 'node:fs/promises';
import { createServer } from 'node:net';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { editorFor } from '../../src/command/proof/editor.ts';
import { run } from './run.ts';

let folder: string;
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'tallybolt proof-'));
});
afterAll(async () => {
  await rm(folder, { recursive: true, force: true });
});

test('in a pipe it prints its address alone, and Ctrl+C ends it with 0', async () => {
  const child = spawn(process.execPath, ['src/command/main.ts', 'proof', 'content', '--port', '0']);
  let out = '';
  let err = '';
  child.stderr.on('data', (part) => {
    err += part;
  });
  const address = await new Promise<string>((resolve) => {
    child.stdout.on('data', (part) => {
      out += part;
      const found = /^Proof: (\S+)\n/.exec(out)?.[1];
      if (found !== undefined) resolve(found);
    });
  });
  const page = await fetch(address);
  expect(page.status).toBe(200);
  expect(await page.text()).toContain('Proof: everything balances');
  child.kill('SIGINT');
  const [code] = await once(child, 'exit');
  expect({ code, out, err }).toEqual({ code: 0, out: `Proof: ${address}\n`, err: '' });
  await expect(fetch(address)).rejects.toThrow();
});

test('without a manual it ends with 2', async () => {
  const { code, out, err } = await run(['proof', folder]);
  expect({ code, out }).toEqual({ code: 2, out: '' });
  expect(err).toContain('There is no manual.yaml');
});

test.each(['x', '-1', '70000', '4711.5'])('a port such as %s is none', async (port) => {
  const { code, err } = await run(['proof', 'content', `--port=${port}`]);
  expect(code).toBe(2);
  expect(err).toContain('65535');
});

test('where no port is free it ends with 2, and leaves nothing behind', async () => {
  const taken = createServer();
  const last = await new Promise<boolean>((resolve) => {
    taken.once('error', () => resolve(false));
    taken.listen(65_535, '127.0.0.1', () => resolve(true));
  });
  const mine = await mkdtemp(join(folder, 'temporary-'));
  const content = resolve('content');
  const { code, out, err } = await run(['proof', content, '--port', '65535'], folder, {
    TMPDIR: mine,
  });
  if (last) taken.close();
  expect({ code, out }).toEqual({ code: 2, out: '' });
  expect(err).toContain('No port from 65535 on is free.');
  expect(await readdir(mine)).toEqual([]);
});

describe('the editor', () => {
  test('is the one that is asked for, then $VISUAL, then $EDITOR', () => {
    const usual = { VISUAL: 'second', EDITOR: 'third' };
    expect(editorFor('first {file}', usual)?.command).toBe('first {file}');
    expect(editorFor(undefined, usual)?.command).toBe('second');
    expect(editorFor(undefined, { VISUAL: ' ', EDITOR: 'third -w' })?.command).toBe('third -w');
    expect(editorFor(undefined, {})).toBeUndefined();
  });

  test('is none that takes over the terminal, unless it is asked for', () => {
    expect(editorFor(undefined, { EDITOR: '/usr/bin/vi -e' })).toBeUndefined();
    expect(editorFor('vi', {})?.command).toBe('vi');
  });

  test('gets the place, with blanks and quotes in it, as one word', async () => {
    const log = join(folder, 'log.json');
    const script = join(folder, 'editor.mjs');
    await writeFile(
      script,
      `import { writeFileSync } from 'node:fs';
writeFileSync(${JSON.stringify(log)}, JSON.stringify(process.argv.slice(2)));\n`,
    );
    const editor = editorFor(`"${process.execPath}" "${script}" +{line}:{column} {file}`, {});
    expect(await editor?.open(`/a b/c"d $(e).md`, 12, 4)).toBeUndefined();
    expect(JSON.parse(await readFile(log, 'utf8'))).toEqual(['+12:4', '/a b/c"d $(e).md']);
  });

  test('says why it did not open', async () => {
    expect(await editorFor('no-such-editor-here {file}', {})?.open('a', 1, 1)).toContain('ENOENT');
    const failing = editorFor(`"${process.execPath}" -e "process.exit(3)" {file}`, {});
    expect(await failing?.open('a', 1, 1)).toContain('exit code 3');
  });
});
