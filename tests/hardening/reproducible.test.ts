import { mkdir, rename } from 'node:fs/promises';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { type Folder, makeFolder, run, soundManual } from '../command/run.ts';
import { printOfFolder } from './print-of-folder.ts';

let folder: Folder;
let first: string;
beforeAll(async () => {
  folder = await makeFolder();
  await folder.write(
    Object.fromEntries(
      Object.entries({
        ...soundManual,
        'manual.yaml': `${soundManual['manual.yaml']}address: https://manuals.example/door\nvariants: { iris: [no, yes] }\n`,
        'figures/İı.svg': '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 9 9"/>',
        'procedures/oil-hinge.md': `${soundManual['procedures/oil-hinge.md']}
:::figure{src="../figures/İı.svg" alt="Iris"}
:::
`,
      }).map(([path, text]) => [`manual/${path}`, text]),
    ),
  );
  expect((await run(['publish', 'manual', '--to', 'first'], folder.path)).code).toBe(0);
  first = await printOfFolder(join(folder.path, 'first'));
});
afterAll(() => folder.remove());

const otherDay = fileURLToPath(new URL('other-day.ts', import.meta.url));

/** One thing after the other would take a while; what differs here differs at once. */
test('the same manual gives the same bytes in another time zone, language, folder, on another day', async () => {
  await mkdir(join(folder.path, 'else where/deep'), { recursive: true });
  await rename(join(folder.path, 'manual'), join(folder.path, 'else where/moved'));
  const env = {
    TZ: 'Pacific/Auckland',
    LANG: 'tr_TR.UTF-8',
    LC_ALL: 'tr_TR.UTF-8',
    NODE_OPTIONS: `--import=${otherDay}`,
    FORCE_COLOR: '1',
  };
  const cwd = join(folder.path, 'else where/deep');
  const { code, err } = await run(['publish', '../moved', '--to', '../../second'], cwd, env);
  expect({ code, err }).toEqual({ code: 0, err: '' });
  expect(await printOfFolder(join(folder.path, 'second'))).toBe(first);
  expect(first.split('\n').length).toBeGreaterThan(30);
});

test('and in the plainest language, twice in a row', async () => {
  const env = { TZ: 'Etc/GMT+12', LANG: 'C', LC_ALL: 'C' };
  for (const _ of [1, 2]) {
    const { code } = await run(['publish', 'else where/moved', '--to', 'third'], folder.path, env);
    expect(code).toBe(0);
    expect(await printOfFolder(join(folder.path, 'third'))).toBe(first);
  }
});
