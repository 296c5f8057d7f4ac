import type { ManualSettings } from '../../../schemas/manual.ts';
import type { Report } from '../../../schemas/report.ts';
import { manualFile, readManual } from '../../catalogue/index.ts';
import { assetsOf, type Outline } from '../../link/index.ts';
import type { Look } from '../../rules/index.ts';
import type { ManualFiles } from '../../source/index.ts';
import type { InspectOptions } from '../inspect.ts';
import { type Digest, LookKeys, missingFile, signOf } from '../kept/look-keys.ts';
import { makeReport } from '../make-report.ts';
import { partsOf } from '../share.ts';
import { sortedFiles } from '../sorted-files.ts';
import { Shares } from './shares.ts';
import type { Settings, Store } from './store.ts';
import type { Worker } from './workforce.ts';

export interface StoredInspection {
  /** The same that `inspect` gives. */
  readonly report: Report;
  /** Procedures that can be had by their id, in order of it. */
  readonly procedures: readonly Pick<Outline, 'id' | 'file'>[];
  readonly levels: ManualSettings['rules'];
  /** What to keep for the next check: what this one needed, and nothing else. */
  readonly store: Store;
  /** How many parts were looked at anew. */
  readonly looked: number;
}

export interface StoredOptions extends InspectOptions {
  readonly version: string;
  readonly digest: Digest;
  /** What a check before has kept. */
  readonly store: Store;
  /** Those who share the work; `work` is a number of bytes of text. */
  readonly workers: (work: number) => readonly [Worker, ...Worker[]];
}

/** The whole check, with what is known from an earlier one, and the rest shared out among workers. */
export async function inspectStored(
  files: ManualFiles,
  { version, digest, store, today, workers }: StoredOptions,
): Promise<StoredInspection> {
  const inOrder = sortedFiles(files);
  const digests = new Map(
    inOrder.texts.map(({ path, text }) => [path, signOf(digest, path, text)]),
  );
  const shares = new Shares(inOrder, digests, store, workers);
  const found = new Map(await shares.lookAtUnknown());
  const { whole } = shares;
  const assets = assetsOf(inOrder);
  const keys = new LookKeys({ ...whole, digests, assets, unreadable: inOrder.unreadable }, digest);
  const wanted = new Map(partsOf(inOrder).map((path) => [path, keys.of(path)]));
  const missing = [...wanted].flatMap(([path, key]) =>
    found.has(path) || store.looks[key] !== undefined ? [] : [path],
  );
  for (const [path, look] of await shares.look(missing)) found.set(path, look);
  const looks = new Map<string, Look>();
  for (const [path, key] of wanted) {
    const look = found.get(path) ?? store.looks[key];
    if (look !== undefined) looks.set(key, look);
  }
  const settings = settingsOf(inOrder, digests, store);
  const report = makeReport([...looks.values()], {
    ...settings,
    version,
    titleOf: (id) => whole.outlines.byId.get(id)?.title ?? id,
    today,
  });
  return {
    report,
    procedures: [...whole.outlines.byId.values()].map(({ id, file }) => ({ id, file })),
    levels: settings.levels,
    looked: found.size,
    store: {
      settings: { [digests.get(manualFile) ?? missingFile]: settings },
      outlines: shares.outlines,
      looks: Object.fromEntries(looks),
    },
  };
}

function settingsOf(
  files: ManualFiles,
  digests: ReadonlyMap<string, string>,
  store: Store,
): Settings {
  const known = store.settings[digests.get(manualFile) ?? missingFile];
  if (known !== undefined) return known;
  const texts = files.texts.filter(({ path }) => path === manualFile);
  const { settings } = readManual({ ...files, texts }).value;
  return { title: settings.title, levels: settings.rules };
}
