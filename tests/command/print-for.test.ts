import { existsSync } from 'node:fs';
import { readdir, readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { readPdf } from '../pdf-text.ts';
import { type Folder, makeFolder, type Ran, run } from './run.ts';

const manual = {
  'manual.yaml': `title: Door manual
address: https://doors.example/manual
variants:
  latch: { name: door latch, values: [none, spring, magnet lock] }
  closer: [no, yes]
never:
  - closer & latch = none
`,
  'procedures/oil-hinge.md': `---
procedure: oil-hinge
title: Oil the hinge
items:
  parts:
    hinge-pin: { name: hinge pin }
    arm: { name: closer arm, when: closer }
---

1. :remove[Lift the closer arm off]{item=arm when=closer}.
2. :remove[Push the pin out]{item=hinge-pin}.
3. :install[Push the pin in]{item=hinge-pin}.
4. :install[Put the closer arm back]{item=arm when=closer}.
5. See [Oil the latch](oil-latch.md).
`,
  'procedures/oil-latch.md': `---
procedure: oil-latch
title: Oil the latch
when: latch = spring
---

1. Oil the latch, see [Oil the hinge](oil-hinge.md).
`,
};

let folder: Folder;
beforeEach(async () => {
  folder = await makeFolder();
  await folder.write(manual);
});
afterEach(() => folder.remove());

const print = (...words: string[]): Promise<Ran> =>
  run(['print', ...words, '--to', 'out'], folder.path);
const pdf = async (name: string) => readPdf(await readFile(join(folder.path, 'out', name)));

test('a machine without a closer: its steps only, its name in the name of the file and on every page', async () => {
  const { code, out, err } = await print('--only', 'oil-hinge', '--for', 'closer = no');
  expect({ code, err }).toEqual({ code: 0, err: '' });
  expect(out).toContain(join('procedures', 'oil-hinge.closer-no.pdf'));
  const { pages } = await pdf('procedures/oil-hinge.closer-no.pdf');
  for (const { text } of pages) {
    expect(text).toContain('doorlatch:any;closer:no');
    expect(text).not.toMatch(/closerarm/);
  }
  expect(pages.map(({ text }) => text).join('')).toMatch(/1Pushthepinout.*2Pushthepinin.*3See/);
  // A link to what is not printed leads to the same machine in the published manual.
  expect(pages.flatMap(({ links }) => links.map(({ url }) => url))).toContain(
    'https://doors.example/manual/procedures/oil-latch/index.html?closer=no',
  );
});

test('the whole manual for one machine leaves out the sheets that are not for it, and says which', async () => {
  const { code, out } = await print('--for', 'latch = "magnet lock"');
  expect(code).toBe(0);
  expect(out).toContain(
    '1 sheet is for no machine with latch = "magnet lock" and left out: oil-latch',
  );
  expect(await readdir(join(folder.path, 'out', 'procedures'))).toEqual([
    'oil-hinge.latch-magnet-lock.pdf',
  ]);
  const { pages } = await pdf('contents.latch-magnet-lock.pdf');
  const text = pages.map((page) => page.text).join('');
  expect(text).toContain('1sheetisnotforthismachine.');
  expect(text).not.toContain('Oilthelatch');
  const files = pages.flatMap(({ links }) => links.map(({ file }) => file ?? ''));
  expect(files.filter((file) => file.startsWith('procedures/'))).not.toEqual([]);
  for (const file of files.filter((one) => one.startsWith('procedures/')))
    expect(file).toMatch(/^procedures\/oil-hinge\.latch-magnet-lock\.pdf/);
});

test('what follows from the choice stands on the sheet, and both names in the order of the manual', async () => {
  const { code } = await print('--only', 'oil-hinge', '--for', 'closer & latch = spring');
  expect(code).toBe(0);
  const { pages } = await pdf('procedures/oil-hinge.latch-spring.closer-yes.pdf');
  for (const { text } of pages) expect(text).toContain('doorlatch:spring;closer:yes');
});

test.each([
  ['clover = yes', 'perhaps “closer” is meant'],
  ['latch = sprung', 'perhaps “spring” is meant'],
  ['spring', 'write “latch = spring”'],
  [
    'closer = yes & latch = none',
    'No machine of this manual is one with closer = yes & latch = none',
  ],
  ['latch != none', 'leaves open which machine a sheet is for'],
  ['closer | latch = spring', 'leaves open which machine a sheet is for'],
  ['latch =', 'The condition breaks off'],
])('--for %j is asked about, and nothing is made', async (condition, words) => {
  const { code, err } = await print('--only', 'oil-hinge', '--for', condition);
  expect(code).toBe(2);
  expect(err).toContain(words);
  expect(existsSync(join(folder.path, 'out'))).toBe(false);
});

test('a sheet that is not for the machine that is asked for is not printed empty', async () => {
  const { code, err } = await print('--only', 'oil-latch', '--for', 'latch = none');
  expect(code).toBe(2);
  expect(err).toContain('oil-latch is for no machine with latch = none');
});
