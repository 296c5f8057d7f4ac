import { manualFile } from '../../catalogue/index.ts';
import type { WrittenOut } from '../../reverse/index.ts';
import type { Look } from '../../rules/index.ts';
import type { ManualFiles } from '../../source/index.ts';
import type { Inspection, InspectOptions } from '../inspect.ts';
import { makeReport } from '../make-report.ts';
import { partsOf, Share, type Whole } from '../share.ts';
import { sortedFiles } from '../sorted-files.ts';
import { emptyStore, type Store } from '../stored/store.ts';
import { type Digest, LookKeys, missingFile, signOf } from './look-keys.ts';

/** What a look gave last, and the key for which it holds. */
interface Kept {
  readonly key: string;
  readonly look: Look;
  readonly writtenOut: WrittenOut | undefined;
}

/**
 * Checks a manual again and again, as its files change. Each inspection is the one that `inspect` gives, but only
 * what depends on a change is analysed again, and what does not is the same object as before.
 */
export class KeptInspection {
  readonly #version: string;
  readonly #digest: Digest;
  #share = new Share();
  /** Attributes that looks may add before all is read anew. */
  #room = Number.POSITIVE_INFINITY;
  /** By path. */
  #digests: ReadonlyMap<string, { readonly text: string; readonly digest: string }> = new Map();
  #kept: ReadonlyMap<string, Kept> = new Map();
  #known: Store;

  /** `digest` makes a short text of a long one, another one for each; `known` is what an earlier check has stored. */
  constructor(version: string, digest: Digest, known: Store = emptyStore) {
    this.#version = version;
    this.#digest = digest;
    this.#known = known;
  }

  /** What the last check gives to store: all that it needed, and nothing else. */
  get store(): Store {
    const digestOf = (path: string): string => this.#digests.get(path)?.digest ?? missingFile;
    const { settings } = this.#share.manual;
    const { outlines } = this.#share;
    return {
      settings: { [digestOf(manualFile)]: { title: settings.title, levels: settings.rules } },
      outlines: Object.fromEntries(
        [...outlines].map(([path, outline]) => [digestOf(path), outline ?? null]),
      ),
      looks: Object.fromEntries([...this.#kept.values()].map(({ key, look }) => [key, look])),
    };
  }

  inspect(files: ManualFiles, { today }: InspectOptions = {}): Inspection {
    const inOrder = sortedFiles(files);
    this.#makeRoom();
    this.#share.take(inOrder);
    this.#digests = new Map(
      inOrder.texts.map(({ path, text }) => {
        const known = this.#digests.get(path);
        const isSame = known?.text === text;
        return [path, isSame ? known : { text, digest: signOf(this.#digest, path, text) }];
      }),
    );
    const { whole } = this.#share;
    const keys = new LookKeys(
      {
        ...whole,
        digests: new Map([...this.#digests].map(([path, { digest }]) => [path, digest])),
        assets: this.#share.assets,
        unreadable: inOrder.unreadable,
      },
      this.#digest,
    );
    const wanted = new Map(partsOf(inOrder).map((path) => [path, keys.of(path)]));
    const { looks, linked } = this.#look(whole, wanted);
    const { settings } = this.#share.manual;
    const report = makeReport(looks, {
      title: settings.title,
      version: this.#version,
      levels: settings.rules,
      titleOf: (id) => whole.outlines.byId.get(id)?.title ?? id,
      today,
    });
    return { report, linked };
  }

  /** Each look adds its branches to the space of the manual; after thousands of looks it begins anew. */
  #makeRoom(): void {
    if (this.#share.manual.space.added <= this.#room) return;
    this.#share = new Share();
    this.#kept = new Map();
  }

  /** Looks at the parts whose keys are new, and takes the others as they were. */
  #look(
    whole: Whole,
    wanted: ReadonlyMap<string, string>,
  ): { readonly looks: readonly Look[] } & Pick<Inspection, 'linked'> {
    const before = this.#kept;
    const isSame = ([path, key]: readonly [string, string]): boolean =>
      before.get(path)?.key === key;
    const known = [...wanted].filter(isSame).flatMap(([path]) => {
      const writtenOut = before.get(path)?.writtenOut;
      const id = whole.outlines.byFile.get(path)?.id;
      return writtenOut === undefined || id === undefined ? [] : [[id, writtenOut] as const];
    });
    const examination = this.#share.examination(whole, new Map(known));
    const isFirst = before.size === 0;
    this.#kept = new Map(
      [...wanted].map(([path, key]) => {
        const kept = before.get(path);
        const look =
          kept?.key === key ? kept.look : (this.#known.looks[key] ?? examination.lookAt(path));
        return [path, { key, look, writtenOut: examination.writtenOut(path) }];
      }),
    );
    // From now on what is kept here has all of it.
    this.#known = emptyStore;
    if (isFirst) this.#room = 4 * this.#share.manual.space.added + leastRoom;
    return {
      looks: [...this.#kept.values()].map(({ look }) => look),
      linked: examination.expanded,
    };
  }
}

const leastRoom = 2_000;
