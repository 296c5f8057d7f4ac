import { readdir, readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { baselineSchema } from '../../schemas/baseline.ts';
import { reportSchema } from '../../schemas/report.ts';
import { brokenManual, type Folder, makeFolder, type Ran, run, soundManual } from './run.ts';

let folder: Folder;
beforeEach(async () => {
  folder = await makeFolder();
  await folder.write(brokenManual);
});
afterEach(() => folder.remove());

const inspected = (...words: string[]): Promise<Ran> => run(['inspect', ...words], folder.path);
const page = brokenManual['procedures/oil-hinge.md'];
const pinBack = '3. :install[Push the pin in]{item=hinge-pin}.\n';
const change = (text: string): Promise<void> => folder.write({ 'procedures/oil-hinge.md': text });
const known = async () =>
  baselineSchema.parse(JSON.parse(await readFile(join(folder.path, 'known.json'), 'utf8'))).known;
const counts = async () => (await known()).map(({ rule, count }) => `${rule} ${count}`);

describe('an old manual', () => {
  test('adopts the check today, and tightens later', async () => {
    expect(await inspected()).toMatchObject({ code: 1 });
    const first = await inspected('--write-baseline', 'known.json');
    expect(first).toMatchObject({ code: 0, err: '' });
    expect(first.out).toBe(
      'known.json is written: 2 known findings.\nDoor manual: 1 procedure, 2 steps, 2 actions checked; nothing new, 2 known.\n',
    );
    expect(await inspected('--baseline', 'known.json')).toMatchObject({
      code: 0,
      out: 'Door manual: 1 procedure, 2 steps, 2 actions checked; nothing new, 2 known.\n',
    });

    await change(`${page}${pinBack}4. Remove the cover.\n`);
    const second = await inspected('--baseline', 'known.json');
    expect(second.code).toBe(1);
    expect(second.out).toMatch(/^procedures\/oil-hinge\.md:14:4 {2}warning {2}untracked-action\n/);
    expect(second.out).toContain('1 new (1 warning), 1 known.\n1 of 2 known findings is gone: ');
    expect(await counts()).toEqual(['left-loose 1', 'left-out 1']);

    const third = await inspected('--write-baseline', 'known.json');
    expect(third.code).toBe(1);
    expect(third.out).toMatch(
      /^known\.json is written again: 1 taken out, 1 left\.\n1 finding is new and not in it: put it right, or waive it with a reason\.\n/,
    );
    expect(await counts()).toEqual(['left-loose 1']);
    expect((await inspected('--write-baseline', 'known.json')).out).toMatch(
      /^known\.json stays as it is: none of its 1 findings is gone\.\n/,
    );

    await change(page);
    const back = await inspected('--baseline', 'known.json');
    expect(back.code).toBe(1);
    expect(back.out).toContain('The hinge pin is still out at the end');
  });

  test('that is clean has an empty baseline', async () => {
    await folder.write(soundManual);
    expect(await inspected('--write-baseline', 'known.json')).toMatchObject({ code: 0 });
    expect(await known()).toEqual([]);
    expect((await inspected('--baseline', 'known.json')).out).toMatch(/nothing new, 0 known\.\n$/);
  });

  test('cannot take for known what keeps a file from being checked', async () => {
    await folder.write({ 'procedures/x.md': new Uint8Array([0xff, 0xfe, 0x00]) });
    const { code, out } = await inspected('--write-baseline', 'known.json');
    expect(code).toBe(1);
    expect(out).toContain('1 finding is not in it: what keeps a file from being checked');
    expect(await counts()).toEqual(['left-loose 1', 'left-out 1']);
    expect(await inspected('--baseline', 'known.json')).toMatchObject({ code: 1 });
  });
});

describe('with other options', () => {
  const json = async (...words: string[]) => {
    const ran = await inspected('--format', 'json', '--baseline', 'known.json', ...words);
    return { code: ran.code, report: reportSchema.parse(JSON.parse(ran.out)) };
  };
  beforeEach(() => inspected('--write-baseline', 'known.json'));

  test('--only counts the rules that are named, in the baseline too', async () => {
    await change(page.replace('2. ', pinBack.replace('3.', '0.')));
    const { report } = await json('--only', 'left-loose');
    expect(report.baseline).toMatchObject({ known: 1, listed: 1, gone: [] });
  });

  test('--level does not take what it hides for gone, and a rule may change its level', async () => {
    await folder.write({ 'manual.yaml': 'title: T\nrules: { left-out: warning }\n' });
    const { code, report } = await json('--level', 'error');
    expect(code).toBe(0);
    expect(report.findings).toMatchObject([{ rule: 'left-loose', known: true }]);
    expect(report.baseline).toEqual({ new: 0, known: 1, listed: 2, gone: [] });
  });

  test('what is waived needs no baseline: it is gone from there', async () => {
    const waive = ':::waive{rule=left-loose}\nAgreed.\n:::\n\n1. ';
    await change(page.replace('1. ', waive));
    const { code, report } = await json();
    expect(code).toBe(0);
    expect(report.summary.waived).toBe(1);
    expect(report.baseline).toMatchObject({ known: 1, listed: 2, gone: [{ rule: 'left-loose' }] });
  });

  test('machine output stays alone on standard output while a baseline is written', async () => {
    const { out, err } = await inspected('--write-baseline', 'known.json', '--format', 'json');
    expect(() => JSON.parse(out)).not.toThrow();
    expect(err).toBe('known.json stays as it is: none of its 2 findings is gone.\n');
  });
});

describe('a baseline that cannot be used ends with 2, and stays as it is', () => {
  const refused = async (message: RegExp, ...words: string[]) => {
    const { code, out, err } = await inspected(...words);
    expect({ code, out }).toEqual({ code: 2, out: '' });
    expect(err).toMatch(message);
    expect(err).not.toContain('    at ');
  };

  test('because it is not there', () =>
    refused(
      /^tallybolt: There is no baseline nowhere\.json\.\nCheck the spelling, or write it first with --write-baseline nowhere\.json\.\n$/,
      '--baseline',
      'nowhere.json',
    ));

  test('because it is a folder', () =>
    refused(
      /^tallybolt: The baseline procedures cannot be read: .+\.\n$/,
      '--baseline',
      'procedures',
    ));

  test.each([
    ['is broken', '{\n  "baseline": 1,\n  "known": [\n    {"rule": \n', /known\.json:\d+:\d+: \S/],
    [
      'is of another version',
      '{\n  "baseline": 7,\n  "known": []\n}\n',
      /known\.json:2:15: it is written in format 7; this version of tallybolt reads format 1\n/,
    ],
    [
      'lacks something',
      '{\n  "baseline": 1,\n  "known": [\n    {"rule":"left-out"}\n  ]\n}\n',
      /known\.json:4:5: /,
    ],
    ['is no UTF-8', '\u0080', /it is not UTF-8 text/],
  ])('because it %s', async (_, text, message) => {
    const bytes = Buffer.from(text, 'latin1');
    await writeFile(join(folder.path, 'known.json'), bytes);
    await refused(message, '--baseline', 'known.json');
    await refused(message, '--write-baseline', 'known.json');
    expect(await readFile(join(folder.path, 'known.json'))).toEqual(bytes);
  });

  test('or is asked for in two ways, or in part', async () => {
    await refused(
      /Both --baseline and --write-baseline/,
      '--baseline',
      'a',
      '--write-baseline',
      'b',
    );
    await refused(
      /A baseline is of the whole manual/,
      '--write-baseline',
      'b',
      '--only',
      'left-out',
    );
    await refused(/A baseline is of the whole manual/, '--write-baseline', 'b', '--level', 'error');
    expect(await readdir(folder.path)).not.toContain('b');
  });
});
