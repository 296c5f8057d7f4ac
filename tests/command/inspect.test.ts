import { spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { mkdir, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { Ajv } from 'ajv';
import fc from 'fast-check';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { reportSchema } from '../../schemas/report.ts';
import { readManualFiles } from '../../src/command/read-manual-files.ts';
import { inspect } from '../../src/report/index.ts';
import { edited, manualFolders, manualFrom } from '../manuals/manual-from.ts';
import { brokenManual, type Folder, makeFolder, type Ran, run, soundManual } from './run.ts';

let folder: Folder;
beforeEach(async () => {
  folder = await makeFolder();
});
afterEach(() => folder.remove());

const escapeCharacter = String.fromCharCode(27);
const isPlain = ({ out, err }: Ran): boolean => !`${out}${err}`.includes(escapeCharacter);
const rulesOf = ({ out }: Ran): string[] =>
  reportSchema.parse(JSON.parse(out)).findings.map(({ rule }) => rule);

describe('the exit code', () => {
  test('is 0 for the demo manual', async () => {
    const ran = await run(['inspect', manualFolders.demo]);
    expect(ran).toMatchObject({ code: 0, err: '' });
    expect(ran.out).toMatch(
      /^.*: \d+ procedures, \d+ steps, \d+ actions checked; everything balances, 1 waived\.\n\nWaived:\n/,
    );
  });

  test('is 0 for a sound manual, named or worked in', async () => {
    await folder.write(soundManual);
    const said = 'Door manual: 1 procedure, 4 steps, 4 actions checked; everything balances.\n';
    expect(await run(['inspect', folder.path])).toEqual({ code: 0, out: said, err: '' });
    expect(await run(['inspect'], folder.path)).toEqual({ code: 0, out: said, err: '' });
  });

  test('is 1 with findings, which show the line and what to do', async () => {
    await folder.write(brokenManual);
    const { code, out, err } = await run(['inspect', folder.path]);
    expect({ code, err }).toEqual({ code: 1, err: '' });
    expect(out).toContain(`procedures/oil-hinge.md:11:4  error  left-loose
  All 4 plate screws are still loose at the end
  11 | 1. :loosen[Loosen the plate screws]{item=plate-screw}.
     |    ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^
  do: Add \`:torque{item=plate-screw}\``);
    expect(out).toMatch(/2 errors\.\n$/);
  });
});

describe('a folder that holds no manual ends with 2 and a plain message', () => {
  test.each([
    [
      'that is not there',
      'nowhere',
      /^tallybolt: There is no folder .*nowhere\.\nCheck the spelling of the path\.\n$/,
    ],
    [
      'that is a file',
      'a-file',
      /^tallybolt: .*a-file is a file\.\nName the folder of the manual, .*\.\n$/,
    ],
    ['below a file', 'a-file/below', /^tallybolt: The folder .* cannot be read: .*\.\n$/],
    [
      'that is empty',
      'empty',
      /^tallybolt: There is no manual\.yaml in .*empty\.\nA manual is a folder with manual\.yaml.*\.\n$/,
    ],
    [
      'with a manual.yml',
      'short',
      /^tallybolt: There is no manual\.yaml in .*short, but there is Manual\.yml\.\nRename it to manual\.yaml\.\n$/,
    ],
    [
      'with a folder called manual.yaml',
      'odd',
      /^tallybolt: manual\.yaml in .*odd cannot be read: it is a folder\.\n$/,
    ],
  ])('%s', async (_, name, message) => {
    await writeFile(join(folder.path, 'a-file'), 'text');
    await mkdir(join(folder.path, 'empty'));
    await folder.write({ 'short/Manual.yml': 'title: T\n' });
    await mkdir(join(folder.path, 'odd/manual.yaml'), { recursive: true });
    const { code, out, err } = await run(['inspect', join(folder.path, name)]);
    expect({ code, out }).toEqual({ code: 2, out: '' });
    expect(err).toMatch(message);
    expect(err).not.toContain('    at ');
  });
});

describe('--format json', () => {
  const schema = JSON.parse(
    readFileSync(new URL('../../schemas/json/report.schema.json', import.meta.url), 'utf8'),
  );
  const fits = new Ajv({ strict: false }).compile(schema);

  test('keeps to the schema in zod and to the one in JSON', async () => {
    await folder.write(brokenManual);
    const { code, out, err } = await run(['inspect', '--format', 'json', folder.path]);
    expect({ code, err }).toEqual({ code: 1, err: '' });
    const report = JSON.parse(out);
    expect(reportSchema.parse(report)).toEqual(report);
    expect(fits(report), JSON.stringify(fits.errors)).toBe(true);
    expect(report.summary).toMatchObject({ error: 2, warning: 0, note: 0 });
    expect(fits({ ...report, findings: [{}] })).toBe(false);
  });

  test('says the same bytes twice, and nothing of where the manual stands', async () => {
    await folder.copy(manualFolders.lathe);
    const broken = edited(
      await manualFrom('lathe'),
      'machines/bench-lathe.yaml',
      'count: 4',
      'count: 5',
    );
    await folder.write(Object.fromEntries(broken.texts.map(({ path, text }) => [path, text])));
    const first = await run(['inspect', '--format', 'json', folder.path]);
    const second = await run(['inspect', '--format', 'json', '.'], folder.path);
    expect(first.code).toBe(1);
    expect(second).toEqual(first);
    expect(first.out).not.toContain(folder.path);
  });

  test('names files from the folder of the manual, with /', async () => {
    await folder.write({
      ...brokenManual,
      'procedures/deep/er/x.md': brokenManual['procedures/oil-hinge.md'].replace(
        'procedure: oil-hinge',
        'procedure: x',
      ),
    });
    const { out } = await run(['inspect', '--format', 'json', folder.path]);
    const files = reportSchema.parse(JSON.parse(out)).findings.map(({ file }) => file);
    expect(new Set(files)).toEqual(new Set(['procedures/deep/er/x.md', 'procedures/oil-hinge.md']));
  });

  test('does not depend on the order of the files', async () => {
    await folder.copy(manualFolders['hand-pump']);
    await folder.write({ 'machines/hand-pump.yaml': 'machine: hand-pump\nname: Pump\n' });
    const files = await readManualFiles(folder.path);
    const asRead = JSON.stringify(inspect(files, '1').report);
    expect(JSON.parse(asRead).findings.length).toBeGreaterThan(50);
    const shuffled = fc.shuffledSubarray([...files.texts], { minLength: files.texts.length });
    fc.assert(
      fc.property(shuffled, (texts) => {
        expect(JSON.stringify(inspect({ ...files, texts }, '1').report)).toBe(asRead);
      }),
      { numRuns: 10 },
    );
  });
});

describe('--only', () => {
  const inspected = (...words: string[]) =>
    run(['inspect', '--format', 'json', ...words, folder.path]);
  beforeEach(() => folder.write(brokenManual));

  test('shows and counts the rules that are named', async () => {
    expect(rulesOf(await inspected())).toEqual(['left-loose', 'left-out']);
    expect(rulesOf(await inspected('--only', 'left-out'))).toEqual(['left-out']);
    expect(rulesOf(await inspected('--only', 'left-out,left-loose'))).toHaveLength(2);
    expect(rulesOf(await inspected('--only', 'left-out', '--only', 'left-loose'))).toHaveLength(2);
    expect(await inspected('--only', 'left-open')).toMatchObject({ code: 0 });
  });

  test('refuses a rule that there is not', async () => {
    const ran = await inspected('--only', 'left-otu');
    expect(ran).toEqual({
      code: 2,
      out: '',
      err: 'tallybolt: There is no rule left-otu.\nDid you mean left-out?\n',
    });
  });
});

describe('waivers', () => {
  const page = brokenManual['procedures/oil-hinge.md'];
  const waiving = (rule: string): string => `:::waive{rule=${rule}}\nAgreed for ${rule}.\n:::\n\n`;
  const rules = 'rules: { left-loose: warning, left-out: note }';
  const shown = async (...words: string[]) => {
    const { out } = await run(['inspect', '--format', 'json', ...words, folder.path]);
    const report = reportSchema.parse(JSON.parse(out));
    return {
      waivers: report.waivers.map(({ rule, waived }) => `${rule} ${waived.length}`),
      waived: report.summary.waived,
      findings: report.findings.length,
    };
  };
  beforeEach(() =>
    folder.write({
      'manual.yaml': `title: T\n${rules}\n`,
      'procedures/oil-hinge.md': page.replace(
        '1. :loosen',
        `${waiving('left-loose')}${waiving('left-out')}1. :loosen`,
      ),
    }),
  );

  test('are all listed and counted where nothing is left out', async () => {
    expect(await shown()).toEqual({
      waivers: ['left-loose 1', 'left-out 1'],
      waived: 2,
      findings: 0,
    });
  });

  test('of other rules than those of --only are neither listed nor counted', async () => {
    expect(await shown('--only', 'left-out')).toEqual({
      waivers: ['left-out 1'],
      waived: 1,
      findings: 0,
    });
    expect(await shown('--only', 'left-open')).toEqual({ waivers: [], waived: 0, findings: 0 });
    const { out } = await run(['inspect', '--only', 'left-out', folder.path]);
    expect(out).toContain('everything balances, 1 waived.');
    expect(out).toContain('Agreed for left-out.');
    expect(out).not.toContain('Agreed for left-loose.');
  });

  test('of findings below --level are neither listed nor counted', async () => {
    expect(await shown('--level', 'warning')).toEqual({
      waivers: ['left-loose 1'],
      waived: 1,
      findings: 0,
    });
    expect(await shown('--level', 'error')).toEqual({ waivers: [], waived: 0, findings: 0 });
    expect(await shown('--level', 'warning', '--only', 'left-out')).toEqual({
      waivers: [],
      waived: 0,
      findings: 0,
    });
  });
});

test('--level leaves out what is below it', async () => {
  await folder.write({
    'manual.yaml': 'title: T\nrules: { left-loose: warning, left-out: note }\n',
    'procedures/oil-hinge.md': brokenManual['procedures/oil-hinge.md'],
  });
  const at = (level: string) => run(['inspect', '--format', 'json', '--level', level, folder.path]);
  const [note, warning, error] = await Promise.all([at('note'), at('warning'), at('error')]);
  expect([note, warning, error].map(rulesOf)).toEqual([
    ['left-loose', 'left-out'],
    ['left-loose'],
    [],
  ]);
  expect([note, warning, error].map(({ code }) => code)).toEqual([1, 1, 0]);
  expect(reportSchema.parse(JSON.parse(warning.out)).summary).toMatchObject({
    error: 0,
    warning: 1,
    note: 0,
  });
});

test('notes alone end with 0', async () => {
  await folder.write({
    'manual.yaml': 'title: T\nrules: { left-loose: note, left-out: note }\n',
    'procedures/oil-hinge.md': brokenManual['procedures/oil-hinge.md'],
  });
  const { code, out } = await run(['inspect', folder.path]);
  expect(code).toBe(0);
  expect(out).toContain('2 notes');
});

describe('colour', () => {
  test.each([
    ['nothing', {}],
    ['NO_COLOR', { NO_COLOR: '1' }],
  ])('is not in a pipe, with %s set', async (_, env) => {
    await folder.write(brokenManual);
    const said = [
      await run(['inspect', folder.path], undefined, env),
      await run(['inspect', 'nowhere'], undefined, env),
      await run(['explain'], undefined, env),
      await run(['--help'], undefined, env),
    ];
    expect(said.map(isPlain)).toEqual([true, true, true, true]);
  });
});

test('a reader that stops reading is no fault', async () => {
  const many = Array.from(
    { length: 1500 },
    (_, i) => `${i + 1}. :check{item=ghost} :check{item=ghost}\n`,
  );
  await folder.write({
    'manual.yaml': 'title: T\n',
    'procedures/p.md': `---\nprocedure: p\ntitle: P\n---\n\n${many.join('\n')}`,
  });
  const main = fileURLToPath(new URL('../../src/command/main.ts', import.meta.url));
  const line = `"${process.execPath}" "${main}" inspect --format json "${folder.path}" | head -c 20`;
  const { stdout, stderr } = spawnSync('sh', ['-c', line], { encoding: 'utf8' });
  expect({ stdout, stderr }).toEqual({ stdout: '{\n  "tool": {\n    "n', stderr: '' });
});
