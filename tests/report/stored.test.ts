import { hash } from 'node:crypto';
import { mkdtemp, readdir, readFile, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { KeptStore } from '../../src/command/kept-store.ts';
import { readManualFiles } from '../../src/command/read-manual-files.ts';
import { ThreadPool } from '../../src/command/thread-pool.ts';
import {
  emptyStore,
  inspect,
  inspectStored,
  KeptInspection,
  OwnWorker,
  type Store,
  type Worker,
} from '../../src/report/index.ts';
import { compareText, type ManualFiles } from '../../src/source/index.ts';

const demo = await readManualFiles('content');
const today = '2026-01-01';

const stored = (files: ManualFiles, store: Store, count = 1) => {
  const more = Array.from({ length: count - 1 }, (): Worker => new OwnWorker());
  return inspectStored(files, {
    version: 'test',
    digest: (text) => hash('sha1', text),
    store,
    today,
    workers: () => [new OwnWorker(), ...more],
  });
};

/** The demo manual with slips of many kinds, some of which hang together over procedures. */
const broken: ManualFiles = {
  ...demo,
  texts: demo.texts
    .map((file, i) => ({
      ...file,
      text:
        i % 4 === 0
          ? file.text.replace(/^(\d+\. .*:(?:install|withdraw|fill|torque)\[.*)$/m, '')
          : i % 4 === 1
            ? file.text.replace(/procedure=([a-z-]+)\}/, 'procedure=$1x}')
            : file.text,
    }))
    .filter((_, i) => i % 13 !== 7),
};

describe('a check with what an earlier one has kept', () => {
  it.for([
    ['the demo manual', demo],
    ['a broken one', broken],
  ] as const)('gives the same report of %s, whoever shares the work', async ([, files]) => {
    const { report } = inspect(files, 'test', { today });
    const first = await stored(files, emptyStore);
    expect(first.report).toEqual(report);
    for (const count of [2, 3, 7]) {
      const shared = await stored(files, emptyStore, count);
      expect(shared.report).toEqual(report);
      expect(sorted(shared.store)).toEqual(sorted(first.store));
    }
    const again = await stored(files, copyOf(first.store), 3);
    expect(again.looked).toBe(0);
    expect(again.report).toEqual(report);
  });

  it('takes of another state what still holds, and nothing else', async () => {
    const { store } = await stored(demo, emptyStore);
    const after = await stored(broken, copyOf(store));
    expect(after.report).toEqual(inspect(broken, 'test', { today }).report);
    expect(after.looked).toBeLessThan(broken.texts.length);
    const back = await stored(demo, after.store, 2);
    expect(back.report).toEqual(inspect(demo, 'test', { today }).report);
  });

  it('looks again only at what an edit touches', async () => {
    const { store } = await stored(demo, emptyStore);
    const texts = demo.texts.map((file) =>
      file.path.endsWith('replace-anvil.md')
        ? { ...file, text: `${file.text}\nOne more sentence.\n` }
        : file,
    );
    expect((await stored({ ...demo, texts }, store)).looked).toBe(1);
  });

  it('goes on in an inspection that is kept', async () => {
    const digest = (text: string): string => hash('sha1', text);
    const { store } = await stored(broken, emptyStore);
    const kept = new KeptInspection('test', digest, copyOf(store));
    expect(kept.inspect(broken, { today }).report).toEqual(
      inspect(broken, 'test', { today }).report,
    );
    expect(sorted(copyOf(kept.store))).toEqual(sorted(copyOf(store)));
    expect(kept.inspect(demo, { today }).report).toEqual(inspect(demo, 'test', { today }).report);
    expect((await stored(demo, kept.store)).looked).toBe(0);
  });

  it('works in threads as in this one', async () => {
    const pool = new ThreadPool();
    try {
      const { report } = await inspectStored(broken, {
        version: 'test',
        digest: (text) => hash('sha1', text),
        store: emptyStore,
        today,
        workers: () => pool.workersFor(1_000_000, new OwnWorker()),
      });
      expect(report).toEqual(inspect(broken, 'test', { today }).report);
    } finally {
      await pool.close();
    }
  });
});

describe('the file in which it is kept', () => {
  it('is read as it was written, and is nothing where a byte of it is another', async () => {
    const into = await mkdtemp(join(tmpdir(), 'kept-'));
    const { store } = await stored(demo, emptyStore);
    await new KeptStore('/manual', into).write(store);
    expect(await new KeptStore('/manual', into).read()).toEqual(copyOf(store));
    expect(await new KeptStore('/other', into).read()).toEqual(emptyStore);
    const [name = ''] = await readdir(into);
    const text = await readFile(join(into, name), 'utf8');
    for (const wrong of ['', text.slice(0, 2000), text.replace('outlines', 'outlinez')]) {
      await writeFile(join(into, name), wrong);
      expect(await new KeptStore('/manual', into).read()).toEqual(emptyStore);
    }
  });

  it('is done without where it cannot be written', async () => {
    const into = join(await mkdtemp(join(tmpdir(), 'kept-')), 'file');
    await writeFile(into, 'not a folder');
    await new KeptStore('/manual', into).write(emptyStore);
    expect(await readFile(into, 'utf8')).toBe('not a folder');
    expect(await new KeptStore('/manual', into).read()).toEqual(emptyStore);
  });
});

/** As it comes back from a file. */
const copyOf = (store: Store): Store => JSON.parse(JSON.stringify(store));

const sorted = (store: Store): unknown =>
  Object.entries(store).map(([name, known]) => [
    name,
    Object.entries(known).toSorted(([a], [b]) => compareText(a, b)),
  ]);
