import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { shareReportSchema } from '../../schemas/share-report.ts';
import { brokenManual, type Folder, makeFolder, run, soundManual } from './run.ts';

const slow = { timeout: 180_000 };
const formats = ['json', 'text', 'sarif', 'junit', 'markdown'] as const;

/** Several sheets with findings that hang together over files, a byte order mark, Windows line ends, a second machine. */
const sheet = brokenManual['procedures/oil-hinge.md'];
const manual = {
  ...brokenManual,
  'procedures/again.md': sheet,
  'procedures/mark.md': `\uFEFF${sheet.replace('procedure: oil-hinge', 'procedure: mark')}`,
  'procedures/windows.md': sheet
    .replace('procedure: oil-hinge', 'procedure: windows')
    .replaceAll('\n', '\r\n'),
  'procedures/performs.md':
    '---\nprocedure: performs\ntitle: Perform it\n---\n\n1. ::perform{procedure=mark}\n2. See [there](windows.md#no-such-step).\n3. ::perform{procedure=wondows}\n',
  'machines/door.yaml':
    'machine: door\nname: Door\nparts:\n  knob: { name: knob }\n  lock: { name: lock, behind: knb }\n',
} as const;

let folder: Folder;
beforeEach(async () => {
  folder = await makeFolder();
  await folder.write(inFolder(manual));
});
afterEach(() => folder.remove());

const inFolder = (files: Readonly<Record<string, string>>): Record<string, string> =>
  Object.fromEntries(Object.entries(files).map(([path, text]) => [`my manual/${path}`, text]));

const tallybolt = (...words: string[]) => run(words, folder.path);

/** Checks one share into a file. */
async function share(number: number, of: number, name = `${number}.json`): Promise<string> {
  const { code, out, err } = await tallybolt('inspect', 'my manual', '--share', `${number}/${of}`);
  expect({ code, err }).toEqual({ code: 0, err: '' });
  await folder.write({ [name]: out });
  return out;
}

describe('inspect --share and merge', slow, () => {
  test('print what inspect prints of the whole, byte for byte, in every format', async () => {
    for (const number of [1, 2, 3]) {
      const printed = await share(number, 3);
      expect(shareReportSchema.safeParse(JSON.parse(printed)).error).toBeUndefined();
      expect(printed).not.toContain(folder.path);
    }
    for (const format of formats) {
      const whole = await tallybolt('inspect', 'my manual', '--format', format);
      expect(whole.code).toBe(1);
      expect(await tallybolt('merge', '2.json', '3.json', '1.json', '--format', format)).toEqual(
        whole,
      );
    }
    const some = ['--only', 'left-out,left-loose', '--level', 'error'];
    expect(await tallybolt('merge', '3.json', '1.json', '2.json', ...some)).toEqual(
      await tallybolt('inspect', 'my manual', ...some),
    );
  });

  test('write reports into files, and know a baseline', async () => {
    const written = await tallybolt('inspect', 'my manual', '--write-baseline', 'known.json');
    expect(written.code).toBe(0);
    await folder.write(inFolder({ 'procedures/more.md': sheet.replace('oil-hinge', 'more') }));
    for (const number of [1, 2]) await share(number, 2);
    const whole = await tallybolt('inspect', 'my manual', '--baseline', 'known.json');
    const words = ['merge', '1.json', '2.json', '--baseline', 'known.json'];
    expect(whole).toMatchObject({ code: 1, out: expect.stringContaining('known') });
    expect(await tallybolt(...words, '--report', 'sarif=merged.sarif')).toEqual(whole);
    await tallybolt(
      'inspect',
      'my manual',
      '--baseline',
      'known.json',
      '--report',
      'sarif=w.sarif',
    );
    expect(await readFile(join(folder.path, 'merged.sarif'), 'utf8')).toBe(
      await readFile(join(folder.path, 'w.sarif'), 'utf8'),
    );
    const over = await tallybolt(
      'merge',
      '1.json',
      '2.json',
      '--report',
      'json=my manual/manual.yaml',
    );
    expect(over).toMatchObject({
      code: 2,
      err: expect.stringContaining('is a text of the manual'),
    });
  });

  test('answer 0 for a sound manual', async () => {
    await folder.remove();
    folder = await makeFolder();
    await folder.write(inFolder(soundManual));
    for (const number of [1, 2]) await share(number, 2);
    const { code, out } = await tallybolt('merge', '1.json', '2.json');
    expect({ code, out }).toEqual({ code: 0, out: (await tallybolt('inspect', 'my manual')).out });
  });
});

describe('what cannot be joined is told by name, with exit code 2', slow, () => {
  beforeEach(async () => {
    for (const number of [1, 2, 3]) await share(number, 3);
  });

  test.each([
    ['a share that is missing', ['1.json', '3.json'], 'Share 2/3 is missing.'],
    [
      'a share given twice',
      ['1.json', '2.json', '1.json', '3.json'],
      'Share 1/3 is there 2 times: 1.json, 1.json.',
    ],
    ['a file that is not there', ['1.json', '4.json'], 'There is no file 4.json.'],
    [
      'a text of the manual',
      ['my manual/manual.yaml'],
      'my manual/manual.yaml is not, or not whole, what',
    ],
  ])('%s', async (_, files, message) => {
    const { code, out, err } = await tallybolt('merge', ...files);
    expect({ code, out }).toEqual({ code: 2, out: '' });
    expect(err).toContain(message);
  });

  test('a share of another state, of another division, of another version, and one that broke off', async () => {
    const one = await readFile(join(folder.path, '1.json'), 'utf8');
    await share(1, 4, 'quarter.json');
    await folder.write({
      'half.json': one.slice(0, one.length / 2),
      'old.json': one.replace(/"version":"[^"]*"/, '"version":"0.0.1"'),
      ...inFolder({ 'procedures/again.md': `${sheet}\nOne more.\n` }),
    });
    await share(1, 3, 'later.json');
    for (const [name, message] of [
      ['later.json', '2.json is of another manual than later.json, or of another state of it.'],
      ['quarter.json', '2.json is one share of 3, and quarter.json one of 4.'],
      ['old.json', 'old.json was checked by version 0.0.1, and this is'],
      ['half.json', 'half.json is not, or not whole, what'],
    ] as const) {
      const { code, err } = await tallybolt('merge', name, '2.json', '3.json');
      expect(code).toBe(2);
      expect(err).toContain(message);
    }
  });
});

describe('--share', slow, () => {
  test.each([
    ['0/8', 'There is no share 0 of 8: the first is 1/8, the last 8/8.'],
    ['9/8', 'There is no share 9 of 8'],
    ['1/0', 'A manual can be shared out in 1 to 10000 shares.'],
    ['x', 'Write which share of how many, such as 3/8.'],
  ])('%s is refused', async (value, message) => {
    const { code, out, err } = await tallybolt('inspect', 'my manual', '--share', value);
    expect({ code, out }).toEqual({ code: 2, out: '' });
    expect(err).toContain(message);
  });

  test('does not go with what is said of the whole', async () => {
    const words = ['inspect', 'my manual', '--share', '1/2', '--format', 'json'];
    expect(await tallybolt(...words)).toMatchObject({
      code: 2,
      err: expect.stringContaining('--share and --format cannot be given together.'),
    });
  });
});
