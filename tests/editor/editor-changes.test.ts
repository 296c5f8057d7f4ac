import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import {
  type CodeAction,
  CodeActionRequest,
  PrepareRenameRequest,
  RenameRequest,
  type WorkspaceEdit,
} from 'vscode-languageserver/node';
import { readManualFiles } from '../../src/command/read-manual-files.ts';
import { inspect } from '../../src/report/index.ts';
import { applyToDisk, demoCopy, EditorClient, removeCopy } from './editor-client.ts';

let folder = '';
const client = new EditorClient();
const path = (file: string): string => join(folder, file);
const anvilFile = 'procedures/cutting/replace-anvil.md';

beforeAll(async () => {
  await client.start();
});
afterAll(async () => {
  expect(client.logged).toEqual([]);
  await client.stop();
});
beforeEach(() => {
  folder = demoCopy();
});
afterEach(() => removeCopy(folder));

const found = async (): Promise<readonly string[]> =>
  inspect(await readManualFiles(folder), '0', { today: '2026-11-25' }).report.findings.map(
    ({ rule, file }) => `${rule} ${file}`,
  );

const renamed = (uri: string, text: string, behind: number, newName: string) =>
  client.connection.sendRequest(RenameRequest.type, {
    textDocument: { uri },
    position: client.at(uri, text, behind),
    newName,
  });

const apply = (edit: WorkspaceEdit | null): readonly string[] =>
  applyToDisk(edit ?? {}).map((file) => file.slice(folder.length + 1));

describe('rename', () => {
  test.for([
    [
      'an item',
      anvilFile,
      'anvil-bolt qty=6',
      'seat-bolt',
      ['machines/brush-chipper.yaml', anvilFile, 'procedures/cutting/set-anvil-gap.md'],
    ],
    ['a step', anvilFile, 'needs=studs-in', 'both-studs', [anvilFile]],
  ] as const)(
    '%s, in every file that names it; afterwards nothing is found',
    async ([, file, place, name, files]) => {
      const uri = await client.open(path(file));
      const at = place.indexOf('=') + 1 < place.length && place.startsWith('needs') ? 8 : 2;
      const prepared = await client.connection.sendRequest(PrepareRenameRequest.type, {
        textDocument: { uri },
        position: client.at(uri, place, at),
      });
      expect(prepared).toHaveProperty('placeholder');
      expect(apply(await renamed(uri, place, at, name))).toEqual(files);
      expect(await found()).toEqual([]);
      const old = place.startsWith('needs') ? 'studs-in' : 'anvil-bolt';
      for (const one of files)
        expect(readFileSync(path(one), 'utf8')).not.toMatch(new RegExp(`\\b${old}\\b`));
      await client.close(uri);
    },
  );

  test('a procedure, from where it is performed', async () => {
    const uri = await client.open(path(anvilFile));
    const files = apply(await renamed(uri, 'procedure=make-safe', 12, 'isolate-machine'));
    expect(files.length).toBeGreaterThan(10);
    expect(files).toContain('procedures/safety/make-safe.md');
    expect(await found()).toEqual([]);
    await client.close(uri);
  });

  test('a section, with the heading and the references to it', async () => {
    const file = 'procedures/cutting/sections.md';
    writeFileSync(path(file), sectioned);
    expect(await found()).toEqual([]);
    const uri = await client.open(path(file));
    expect(apply(await renamed(uri, 'of=removal', 4, 'Taking the lid off'))).toEqual([file]);
    const text = readFileSync(path(file), 'utf8');
    expect(text).toContain('## Taking the lid off\n');
    expect(text).toContain('::reverse{of=taking-the-lid-off}');
    expect(text).toContain('(#taking-the-lid-off)');
    expect(await found()).toEqual([]);
    await client.close(uri);
  });

  test('a variant and a value of one', async () => {
    const uri = await client.open(path('manual.yaml'));
    const files = apply(await renamed(uri, 'winch & brakes', 2, 'feed-winch'));
    expect(files).toContain('manual.yaml');
    expect(files.length).toBeGreaterThan(1);
    expect(await found()).toEqual([]);
    await client.close(uri);
    const again = await client.open(path('manual.yaml'));
    expect(apply(await renamed(again, '[overrun', 3, 'inertia')).length).toBeGreaterThan(1);
    expect(await found()).toEqual([]);
    await client.close(again);
  });

  test.for([
    ['anvil-access-bolt', /“anvil-access-bolt” is taken: there is already a fastener/],
    ['Anvil Bolt', /“Anvil Bolt” is no id/],
    ['anvil--bolt', /is no id/],
  ] as const)('is refused for %s', async ([name, words]) => {
    const uri = await client.open(path(anvilFile));
    await expect(renamed(uri, 'anvil-bolt qty=6', 2, name)).rejects.toThrow(words);
    await client.close(uri);
  });

  test('is refused while a file cannot be read, for rules, machines and plain words', async () => {
    const uri = await client.open(path(anvilFile));
    await expect(renamed(uri, 'machine: brush', 10, 'chipper')).rejects.toThrow(/name of its file/);
    await expect(renamed(uri, 'The anvil leaves', 6, 'x')).rejects.toThrow(
      /Nothing that can be renamed/,
    );
    const catalogue = await client.open(path('machines/brush-chipper.yaml'));
    await client.replace(catalogue, '  anvil-bolt:', '  anvil-bolt: "');
    await expect(renamed(uri, 'anvil-bolt qty=6', 2, 'seat-bolt')).rejects.toThrow(
      /cannot be read whole|Nothing/,
    );
    await client.close(catalogue);
    await client.close(uri);
  });
});

const sectioned = `---
procedure: sections
title: Take the lid off and put it back
system: Service
items:
  parts:
    spare-lid: { name: spare lid }
---

See [the removal](#removal).

## Removal

1. :remove[Lift the spare lid off]{item=spare-lid}.

## Return

::reverse{of=removal}
`;

describe('quick fixes', () => {
  async function actions(uri: string, text: string): Promise<readonly CodeAction[]> {
    const position = client.at(uri, text, 1);
    const diagnostics = await client.until(uri, (all) => all.length > 0);
    const answer = await client.connection.sendRequest(CodeActionRequest.type, {
      textDocument: { uri },
      range: { start: position, end: position },
      context: { diagnostics: [...diagnostics] },
    });
    return (answer ?? []).flatMap((one) => ('edit' in one ? [one] : []));
  }

  async function spoilt(text: string, by: string): Promise<string> {
    const source = readFileSync(path(anvilFile), 'utf8');
    expect(source).toContain(text);
    writeFileSync(path(anvilFile), source.replace(text, by));
    return client.open(path(anvilFile));
  }

  test('the suggestion of a finding writes what is missing; afterwards nothing is left out', async () => {
    const uri = await spoilt('9. :torque{item=anvil-access-bolt with=torque-wrench-small}.\n', '');
    const all = await actions(uri, '[Put in the 6 access cover bolts]');
    const [first] = all.filter(({ diagnostics }) => (diagnostics ?? []).length > 0);
    expect(first?.title).toBe('Write the missing steps');
    apply(first?.edit ?? null);
    expect(await found()).toEqual([]);
    await client.close(uri);
  });

  test('all steps that a job lacks', async () => {
    const uri = await spoilt(
      /8\. :install\[Put in the 6 access cover bolts\][\s\S]*?small\}\.\n/.exec(
        readFileSync(path(anvilFile), 'utf8'),
      )?.[0] ?? '',
      '',
    );
    const all = await actions(uri, ':remove{item=anvil-access-bolt}');
    const whole = all.find(({ title }) => /that this job lacks|Write/.test(title));
    apply(whole?.edit ?? null);
    expect(await found()).toEqual([]);
    await client.close(uri);
  });

  test('a fix of form is preferred, in a file with CRLF too', async () => {
    const source = readFileSync(path(anvilFile), 'utf8').replace(
      'with=torque-wrench-large}',
      'with=torque-wrench-large value="220 Nm"}',
    );
    writeFileSync(path(anvilFile), source.replaceAll('\n', '\r\n'));
    const uri = await client.open(path(anvilFile));
    const all = await actions(uri, 'Nm"');
    const fix = all.find(({ isPreferred }) => isPreferred);
    expect(fix?.title).toContain('N·m');
    apply(fix?.edit ?? null);
    expect(await found()).toEqual([]);
    expect(readFileSync(path(anvilFile), 'utf8')).not.toMatch(/[^\r]\n/);
    await client.close(uri);
  });

  test('a waiver: asks for its reason, and lets the finding pass once it has one', async () => {
    const uri = await spoilt(
      '9. :discard[Mark the old anvil as scrap]{item=anvil}.',
      '9. :discard[Mark the old anvil as scrap]{item=anvil}. Tighten the clamp securely.',
    );
    const all = await actions(uri, 'securely');
    const rule =
      /Waive (\S+)/.exec(all.find(({ title }) => title.startsWith('Waive'))?.title ?? '')?.[1] ??
      '';
    const waive = all.find(({ title }) => title.startsWith(`Waive ${rule}`));
    const before = await found();
    apply(waive?.edit ?? null);
    expect(await found()).toContain(`waiver-reason ${anvilFile}`);
    const text = readFileSync(path(anvilFile), 'utf8');
    writeFileSync(
      path(anvilFile),
      text.replace(/(:::waive\{[^}]*\}\n) *\n/, '$1   The painter needs it so.\n'),
    );
    expect(await found()).toEqual(before.filter((one) => !one.startsWith(`${rule} `)));
    await client.close(uri);
  });
});
