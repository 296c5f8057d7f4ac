import { mkdirSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { DiagnosticSeverity, FileChangeType } from 'vscode-languageserver/node';
import { demoCopy, EditorClient, removeCopy } from './editor-client.ts';

const folder = demoCopy();
const path = (file: string): string => join(folder, file);
const anvilPath = path('procedures/cutting/replace-anvil.md');
const cataloguePath = path('machines/brush-chipper.yaml');
const client = new EditorClient();

beforeAll(async () => {
  const { capabilities, serverInfo } = await client.start();
  expect(serverInfo?.name).toBe('tallybolt');
  expect(capabilities.positionEncoding).toBe('utf-16');
});
afterAll(async () => {
  expect(client.logged).toEqual([]);
  expect(await client.stop()).toBe(0);
  removeCopy(folder);
});

const sixIn =
  ':install[Put in the 6 inner anvil bolts, each with its hardened washer]{item=anvil-bolt qty=6}';
const fourIn = sixIn.replaceAll('6', '4');

describe('diagnostics', () => {
  test('a sound manual has none, and each file that opens is told so', async () => {
    const anvil = await client.open(anvilPath);
    const found = await client.until(anvil, () => true);
    expect(found).toEqual([]);
    await client.close(anvil);
  });

  test('a text that is not saved counts, with the other places and the page of the rule', async () => {
    const anvil = await client.open(anvilPath);
    const version = await client.replace(anvil, sixIn, fourIn);
    const found = await client.until(
      anvil,
      (all, params) => params.version === version && all.length > 0,
    );
    const left = found.find(({ code }) => code === 'left-out');
    expect(left?.severity).toBe(DiagnosticSeverity.Error);
    expect(left?.message).toMatch(/2 of 8 anvil bolts are still out at the end\n.*:install/);
    expect(left && client.slice(anvil, left.range)).toMatch(/^:remove\[/);
    const places = left?.relatedInformation?.map(({ location }) =>
      client.slice(anvil, location.range),
    );
    expect(places).toContain(fourIn);
    const page = readFileSync(fileURLToPath(left?.codeDescription?.href ?? ''), 'utf8');
    expect(page).toContain('## Bad');

    await client.replace(anvil, fourIn, sixIn);
    await client.until(anvil, (all) => all.length === 0);
    await client.close(anvil);
  });

  test('closing without saving goes back to what lies on disk', async () => {
    const anvil = await client.open(anvilPath);
    await client.replace(anvil, sixIn, fourIn);
    await client.until(anvil, (all) => all.length > 0);
    await client.close(anvil);
    await client.until(anvil, (all) => all.length === 0);
  });

  test('a change of the catalogue is told in the procedures, open or not', async () => {
    const catalogue = await client.open(cataloguePath);
    const anvil = pathToFileURL(anvilPath).href;
    const entry = client.text(catalogue).match(/^ {2}anvil-bolt:[\s\S]*?count: 8/m)?.[0] ?? '';
    await client.replace(catalogue, entry, entry.replace('count: 8', 'count: 9'));
    const found = await client.until(anvil, (all) => all.length > 0);
    expect(found.map(({ code }) => code)).toContain('still-held');
    await client.close(catalogue);
    await client.until(anvil, (all) => all.length === 0);
  });

  test('files that change, come and go on disk', async () => {
    const anvil = await client.open(anvilPath);
    await client.until(anvil, (all) => all.length === 0);
    const other = path('procedures/trailer/added.md');
    const uri = pathToFileURL(other).href;
    writeFileSync(
      other,
      '---\nprocedure: added\ntitle: Added\n---\n\n1. :remove{item=no-such-item}.\n',
    );
    await client.changedOnDisk(other, FileChangeType.Created);
    const found = await client.until(uri, (all) => all.length > 0);
    expect(found.map(({ code }) => code)).toContain('unknown-item');
    expect(client.shown.get(uri)?.version).toBeUndefined();
    rmSync(other);
    await client.changedOnDisk(other, FileChangeType.Deleted);
    await client.until(uri, (all) => all.length === 0);

    const figure = path('figures/anvil.svg');
    renameSync(figure, `${figure}.away`);
    await client.changedOnDisk(figure, FileChangeType.Deleted);
    await client.until(anvil, (all) => all.some(({ code }) => code === 'figure-missing'));
    renameSync(`${figure}.away`, figure);
    await client.changedOnDisk(figure, FileChangeType.Created);
    await client.until(anvil, (all) => all.length === 0);
    await client.close(anvil);
  });

  test('a manual that is none any more has none', async () => {
    const second = demoCopy('zweites Handbuch, 50% grün #2');
    const uri = await client.open(join(second, 'procedures/cutting/replace-anvil.md'));
    await client.replace(uri, sixIn, fourIn);
    await client.until(uri, (all) => all.length > 0);
    rmSync(join(second, 'manual.yaml'));
    await client.changedOnDisk(join(second, 'manual.yaml'), FileChangeType.Deleted);
    await client.until(uri, (all) => all.length === 0);
    await client.close(uri);
    removeCopy(second);
  });

  test('of two manuals each has its own', async () => {
    const second = demoCopy('second');
    const [here, there] = [
      await client.open(anvilPath),
      await client.open(join(second, 'procedures/cutting/replace-anvil.md')),
    ];
    await client.replace(there, sixIn, fourIn);
    await client.until(there, (all) => all.length > 0);
    await client.until(here, (all) => all.length === 0);
    await client.close(here);
    await client.close(there);
    removeCopy(second);
  });

  test('the manual around a file is the nearest one above it', async () => {
    const inner = path('procedures/inner');
    mkdirSync(join(inner, 'procedures'), { recursive: true });
    writeFileSync(join(inner, 'manual.yaml'), 'title: Inner manual\n');
    const own = join(inner, 'procedures/lone.md');
    writeFileSync(
      own,
      '---\nprocedure: lone\ntitle: Lone\nitems:\n  parts:\n    lid: { name: lid }\n---\n\n1. :remove{item=lid}.\n',
    );
    const uri = await client.open(own);
    const found = await client.until(uri, (all) => all.length > 0);
    expect(found.map(({ code }) => code)).toEqual(['left-out']);
    await client.close(uri);
    rmSync(inner, { recursive: true });
  });
});

test('the server asks for news of the files of manuals', () => {
  expect(client.watched.join()).toMatch(/manual\.yaml.*machines.*procedures.*figures/);
});
