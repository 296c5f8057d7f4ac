import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import fc from 'fast-check';
import { afterAll, beforeAll, expect, test } from 'vitest';
import {
  CodeActionRequest,
  CompletionRequest,
  DefinitionRequest,
  DocumentSymbolRequest,
  FoldingRangeRequest,
  HoverRequest,
  InlayHintRequest,
  type Position,
  PrepareRenameRequest,
  ReferencesRequest,
  RenameRequest,
} from 'vscode-languageserver/node';
import { demoCopy, EditorClient, removeCopy } from './editor-client.ts';

const folder = demoCopy('Häcksler 100% (neu) #1');
const client = new EditorClient();
const anvilPath = join(folder, 'procedures/cutting/replace-anvil.md');
const cataloguePath = join(folder, 'machines/brush-chipper.yaml');

beforeAll(async () => {
  await client.start();
});
afterAll(async () => {
  expect(client.errors).toBe('');
  expect(client.logged).toEqual([]);
  expect(await client.stop()).toBe(0);
  removeCopy(folder);
});

/** Asks everything that an editor asks; a request that fails fails the test, but for a rename that is refused. */
async function askAll(uri: string, position: Position): Promise<readonly unknown[]> {
  const { connection } = client;
  const textDocument = { uri };
  const range = { start: position, end: position };
  const refused = (error: Error): string => {
    expect(error.message).not.toMatch(/Request .* failed/);
    return error.message;
  };
  return Promise.all([
    connection.sendRequest(CompletionRequest.type, { textDocument, position }),
    connection.sendRequest(HoverRequest.type, { textDocument, position }),
    connection.sendRequest(DefinitionRequest.type, { textDocument, position }),
    connection.sendRequest(ReferencesRequest.type, {
      textDocument,
      position,
      context: { includeDeclaration: true },
    }),
    connection.sendRequest(CodeActionRequest.type, {
      textDocument,
      range,
      context: { diagnostics: [] },
    }),
    connection.sendRequest(DocumentSymbolRequest.type, { textDocument }),
    connection.sendRequest(FoldingRangeRequest.type, { textDocument }),
    connection.sendRequest(InlayHintRequest.type, {
      textDocument,
      range: { start: { line: 0, character: 0 }, end: position },
    }),
    connection.sendRequest(PrepareRenameRequest.type, { textDocument, position }).catch(refused),
    connection
      .sendRequest(RenameRequest.type, { textDocument, position, newName: 'another-id' })
      .catch(refused),
  ]);
}

const nowhere = { line: 0, character: 0 };
const empty = [[], null, [], [], [], [], [], [], null, null];

test('texts without a file, files outside of every manual, addresses that are none', async () => {
  const outside = mkdtempSync(join(tmpdir(), 'tallybolt-outside-'));
  writeFileSync(join(outside, 'lone.md'), '# Alone\n');
  const lone = await client.open(join(outside, 'lone.md'));
  expect(await askAll(lone, nowhere)).toEqual(empty);
  const untitled = await client.open('new.md', '---\nprocedure: x\n---\n', 'untitled:Untitled-1');
  expect(await askAll(untitled, nowhere)).toEqual(empty);
  for (const uri of ['file://host/x.md', 'file:///%', 'no address', 'http://localhost/x.md'])
    expect(await askAll(uri, nowhere)).toEqual(empty);
  await client.close(lone);
  await client.close(untitled);
  rmSync(outside, { recursive: true });
});

test('a file that is not saved yet belongs to the manual', async () => {
  const path = join(folder, 'procedures/trailer/noch nicht gesichert.md');
  const uri = await client.open(
    path,
    '---\nprocedure: fresh\ntitle: Fresh\n---\n\n1. :remove{item=no-such}.\n',
  );
  const found = await client.until(uri, (all) => all.length > 0);
  expect(found.map(({ code }) => code)).toContain('unknown-item');
  await client.close(uri);
  await client.until(uri, (all) => all.length === 0);
});

test('requests that are none get an error, and the next one its answer', async () => {
  const uri = await client.open(anvilPath);
  const { connection } = client;
  await expect(connection.sendRequest('textDocument/nothing', {})).rejects.toThrow();
  await expect(
    connection.sendRequest('textDocument/hover', { textDocument: { uri } }),
  ).rejects.toThrow();
  await expect(
    connection.sendRequest('textDocument/completion', { position: 3 }),
  ).rejects.toThrow();
  await askAll(uri, { line: 100_000, character: 100_000 });
  await askAll(uri, { line: 3, character: 100_000 });
  const symbols = await connection.sendRequest(DocumentSymbolRequest.type, {
    textDocument: { uri },
  });
  expect(symbols?.length).toBeGreaterThan(3);
  await client.close(uri);
});

test('positions in a file with a byte order mark and CRLF, open and closed', async () => {
  const source = readFileSync(anvilPath, 'utf8');
  const spoilt = source.replace('{item=anvil new}', '{item=no-such new}').replaceAll('\n', '\r\n');
  const mark = '\uFEFF';
  writeFileSync(anvilPath, mark + spoilt);
  // The catalogue is open, the procedure is not: an editor that opens it will not show the mark.
  const catalogue = await client.open(cataloguePath);
  const closed = pathToFileURL(anvilPath).href;
  await client.changedOnDisk(anvilPath, 2);
  const expected = { line: spoilt.split('\r\n').findIndex((line) => line.includes('no-such')) };
  const told = await client.until(closed, (all) => all.some(({ code }) => code === 'unknown-item'));
  const there = told.find(({ code }) => code === 'unknown-item');
  expect(there?.range.start).toMatchObject(expected);
  const open = await client.open(anvilPath);
  const again = await client.until(open, (_, { version }) => version === 1);
  const here = again.find(({ code }) => code === 'unknown-item');
  expect(here?.range).toEqual(there?.range);
  expect(here && client.slice(open, here.range)).toBe('no-such');
  await client.close(open);
  await client.close(catalogue);
  writeFileSync(anvilPath, source);
  await client.changedOnDisk(anvilPath, 2);
  await client.until(closed, (all) => all.length === 0);
});

test('letters beyond the first plane count twice, as UTF-16 does', async () => {
  const uri = await client.open(anvilPath);
  await client.replace(
    uri,
    '9. :discard[Mark the old anvil as scrap]{item=anvil}',
    '9. 🔩🔧 :discard[Mark the old anvil as scrap]{item=no-such}',
  );
  const found = await client.until(uri, (all) => all.some(({ code }) => code === 'unknown-item'));
  const range = found.find(({ code }) => code === 'unknown-item')?.range;
  expect(range && client.slice(uri, range)).toBe('no-such');
  await client.close(uri);
});

test('an editor that can do little gets as much as it can take', async () => {
  const plain = new EditorClient();
  const own = demoCopy('plain');
  await plain.start({});
  const path = join(own, 'procedures/cutting/replace-anvil.md');
  const uri = await plain.open(path);
  await plain.until(uri, (all) => all.length === 0);
  expect(plain.watched).toEqual([]);
  // It watches no files: when something is saved, others are looked at again.
  const other = join(own, 'procedures/trailer/added.md');
  writeFileSync(other, '---\nprocedure: added\ntitle: Added\n---\n\n1. :remove{item=no-such}.\n');
  await plain.connection.sendNotification('textDocument/didSave', { textDocument: { uri } });
  const found = await plain.until(pathToFileURL(other).href, (all) => all.length > 0);
  expect(found.some((one) => 'codeDescription' in one || 'relatedInformation' in one)).toBe(false);
  rmSync(other);
  const renamed = await plain.connection.sendRequest(RenameRequest.type, {
    textDocument: { uri },
    position: plain.at(uri, 'needs=studs-in', 8),
    newName: 'both-studs',
  });
  expect(renamed?.documentChanges).toBeUndefined();
  expect(renamed?.changes?.[uri]?.map(({ newText }) => newText)).toEqual([
    'both-studs',
    'both-studs',
  ]);
  expect(await plain.stop()).toBe(0);
  removeCopy(own);
});

const pieces = [
  ':',
  '::',
  ':::',
  '{',
  '}',
  '[',
  ']',
  '"',
  '=',
  '\n',
  '\n\n',
  '---\n',
  '#',
  '1. ',
  '   ',
  '\t',
  '\u0000',
  '🔩',
  ':remove{item=',
  'when="',
  'anvil',
  '::perform{procedure=',
  '- ',
  ': ',
  '&',
  '|',
  '\r\n',
  ':::either[x]\n',
  '::step{#',
  '22 N·m',
  '<b>',
];

const edit = fc.record({
  file: fc.constantFrom(
    'procedure' as const,
    'procedure' as const,
    'catalogue' as const,
    'manual' as const,
  ),
  at: fc.double({ min: 0, max: 1, noNaN: true }),
  length: fc.oneof(fc.constant(0), fc.nat(6), fc.nat(400)),
  text: fc.oneof(fc.constant(''), fc.constantFrom(...pieces), fc.string({ maxLength: 8 })),
});

test('no edit, whatever it leaves behind, ends the server or fails a request', async () => {
  const uris = {
    procedure: await client.open(anvilPath),
    catalogue: await client.open(cataloguePath),
    manual: await client.open(join(folder, 'manual.yaml')),
  };
  const originals = Object.values(uris).map((uri) => [uri, client.text(uri)] as const);
  const edits = fc.sample(edit, { numRuns: 60, seed: 26 });
  for (const [i, { file, at, length, text }] of edits.entries()) {
    const uri = uris[file];
    const size = client.text(uri).length;
    const start = Math.floor(at * size);
    await client.type(uri, start, Math.min(size, start + length), text);
    const answers = await askAll(uri, client.document(uri).positionAt(start + text.length));
    expect(answers).toHaveLength(10);
    if (i % 20 === 19)
      for (const [one, original] of originals)
        await client.type(one, 0, client.text(one).length, original);
  }
  await client.until(uris.procedure, (all) => all.length === 0);
  await client.until(uris.catalogue, (all) => all.length === 0);
  for (const uri of Object.values(uris)) await client.close(uri);
});
