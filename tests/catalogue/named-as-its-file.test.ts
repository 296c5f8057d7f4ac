import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { machineFile, namedAsItsFile, readManual } from '../../src/catalogue/index.ts';
import { readManualFiles } from '../../src/command/read-manual-files.ts';
import type { TextFile } from '../../src/source/index.ts';
import { changedText } from '../fuzz/changed-text.ts';

const { texts } = await readManualFiles('content');
const machines = texts.filter(({ path }) => machineFile.test(path));

const read = (file: TextFile): string | undefined =>
  readManual({ texts: [file], unreadable: [], others: [] }).machines[0]?.id;

describe('the id of a machine told from its file', () => {
  it('is known of every machine of the demo manual', () => {
    expect(machines.length).toBeGreaterThan(0);
    expect(machines.map(namedAsItsFile)).toEqual(machines.map(read));
  });

  it.for([
    ['another id', 'machine: other\nname: A\n', undefined],
    ['none', 'name: A\n', undefined],
    ['two', 'machine: press\nmachine: other\nname: A\n', undefined],
    ['one in quotes after it', 'machine: press\n"machine": other\n', undefined],
    ['one that is written in flow', '{ machine: other }\n', undefined],
    ['one in a second document', 'machine: press\n---\nmachine: other\n', undefined],
    ['one that goes on in the next line', 'machine: press\n  and more\nname: A\n', 'press'],
    ['nothing but that', 'machine: press\n', 'press'],
    ['YAML that breaks off behind it', 'machine: press\nname: [\n', 'press'],
    ['YAML that breaks off before it', 'name: [\nmachine: press\n', 'press'],
    ['Windows line ends', 'machine: press\r\nname: A\r\n', 'press'],
  ] as const)('with %s', ([, text, id]) => {
    const file = { path: 'machines/press.yaml', text };
    expect(namedAsItsFile(file)).toBe(id);
    if (id !== undefined) expect(read(file)).toBe(id);
  });

  it('is the one that is read, whatever is wrong in the file', { timeout: 120_000 }, () => {
    const small = { path: 'machines/press.yaml', text: 'machine: press\nname: Press\nnote: old\n' };
    const changed = fc
      .constantFrom(small, small, ...machines)
      .chain((file) => changedText(file.text).map((text) => ({ ...file, text })));
    let known = 0;
    fc.assert(
      fc.property(changed, (file) => {
        const id = namedAsItsFile(file);
        if (id === undefined) return;
        known += 1;
        expect(read(file)).toBe(id);
      }),
      { numRuns: 300 },
    );
    expect(known).toBeGreaterThan(50);
  });
});
