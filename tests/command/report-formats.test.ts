import { readdir, readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { parseXml } from '@rgrove/parse-xml';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { runIn } from '../report/sarif/read-sarif.ts';
import { brokenManual, type Folder, makeFolder, run } from './run.ts';

let folder: Folder;
beforeEach(async () => {
  folder = await makeFolder();
  const texts = Object.entries(brokenManual).map(([path, text]) => [`my manual/${path}`, text]);
  await folder.write(Object.fromEntries(texts));
});
afterEach(() => folder.remove());

const inspected = (...words: string[]) => run(['inspect', 'my manual', ...words], folder.path);
const written = (name: string): Promise<string> => readFile(join(folder.path, name), 'utf8');

describe('--format', () => {
  test('sarif prints a log and nothing else; addresses lead from where it was run', async () => {
    const { code, out, err } = await inspected('--format', 'sarif');
    expect({ code, err }).toEqual({ code: 1, err: '' });
    const { results, invocations } = runIn(out);
    expect(invocations?.[0]?.exitCode).toBe(1);
    expect(results[0]?.locations?.[0]?.physicalLocation?.artifactLocation).toMatchObject({
      uri: 'my%20manual/procedures/oil-hinge.md',
      uriBaseId: '%SRCROOT%',
    });
    expect(out).not.toContain(folder.path);
  });

  test('junit prints XML and nothing else', async () => {
    const { code, out, err } = await inspected('--format', 'junit');
    expect({ code, err }).toEqual({ code: 1, err: '' });
    expect(parseXml(out).root?.attributes).toEqual({
      name: 'Door manual',
      tests: '3',
      failures: '2',
      errors: '0',
    });
  });

  test('markdown prints a summary', async () => {
    const { code, out, err } = await inspected('--format', 'markdown');
    expect({ code, err }).toEqual({ code: 1, err: '' });
    expect(out).toMatch(/^## Door manual\n\n.*; 2 errors\.\n/);
  });

  test.each(['json', 'sarif', 'junit', 'markdown'])(
    '%s says the same bytes twice',
    async (format) => {
      expect(await inspected('--format', format)).toEqual(await inspected('--format', format));
    },
  );
});

describe('--report', () => {
  test('writes files beside what is printed, the same as --format prints', async () => {
    const files = [
      'sarif=out.sarif',
      'junit=out.xml',
      'markdown=out.md',
      'json=out.json',
      'text=out.txt',
    ];
    const { code, out, err } = await inspected(...files.flatMap((file) => ['--report', file]));
    expect({ code, err }).toEqual({ code: 1, err: '' });
    expect(out).toMatch(/2 errors\.\n$/);
    for (const file of files) {
      const [format = '', name = ''] = file.split('=');
      expect(await written(name), file).toBe((await inspected('--format', format)).out);
    }
    // A file that is half written would stand there under another name.
    expect((await readdir(folder.path)).sort()).toEqual(
      [...files.map((file) => file.slice(file.indexOf('=') + 1)), 'my manual'].sort(),
    );
  });

  test.each([
    [
      'of a format that there is not',
      'sarf=x',
      /Write a format and a file, such as sarif=report\.sarif/,
    ],
    ['without a file', 'sarif=', /Write a format and a file/],
    [
      'into a folder that there is not',
      'json=no/where.json',
      /no\/where\.json cannot be written: there is no such folder\./,
    ],
    [
      'over a text of the manual',
      'json=my manual/manual.yaml',
      /my manual\/manual\.yaml is a text of the manual\./,
    ],
  ])('%s is refused', async (_, file, message) => {
    const before = await written('my manual/manual.yaml');
    const { code, out, err } = await inspected('--report', file);
    expect({ code, out }).toEqual({ code: 2, out: '' });
    expect(err).toMatch(message);
    expect(await written('my manual/manual.yaml')).toBe(before);
  });
});
