import type { ManualSettings } from '../../../schemas/manual.ts';
import { machineFile, manualFile } from '../../catalogue/index.ts';
import type { Look } from '../../rules/index.ts';
import type { TextFile } from '../../source/index.ts';
import { inBatches } from '../in-batches.ts';
import type { Digest } from '../kept/look-keys.ts';
import { partsOf, Share, type Whole } from '../share.ts';
import type { CheckedShare } from './checked-share.ts';
import { filesOfLook } from './files-of-look.ts';
import { machinesIn, ShareFiles } from './share-files.ts';
import { type ShareNumber, shareOut } from './share-out.ts';
import type { SignedFiles } from './sign.ts';

export interface ShareOptions {
  readonly version: string;
  readonly digest: Digest;
  readonly share: ShareNumber;
  /** How the folder of the check leads to the manual: empty, or with `/` at its end. */
  readonly folder: string;
}

/** Checks one share of a manual: reads in full only what is in it and what that depends on. */
export async function inspectShare(
  files: SignedFiles,
  { version, digest, share, folder }: ShareOptions,
): Promise<CheckedShare> {
  const paths = partsOf({ texts: files.signs });
  const signs = new Map(files.signs.map((sign) => [sign.path, sign]));
  const own = shareOut(
    paths.map((path) => {
      const sign = signs.get(path);
      return { path, length: sign?.length ?? 0, group: groupOf(path, sign?.outline?.machine) };
    }),
    share,
  );
  const { all, whole, settings } = await lookInBatches(files, own);
  const settled = new Set(all.flatMap(({ look }) => look.settled));
  const looks = all.map(({ path, look }) => ({ path, look: undecided(look, settled) }));
  const named = new Set(looks.flatMap(({ look }) => [...filesOfLook(look)]));
  const texts: TextFile[] = [];
  for (const path of [...named].sort())
    if (signs.has(path)) texts.push({ path, text: await files.textOf(path) });
  const { signs: _, textOf: __, ...others } = files;
  return {
    tool: { name: 'tallybolt', version },
    share: { number: share.number, of: share.of },
    manual: {
      title: settings.title,
      digest: digest(JSON.stringify([files.signs.map((sign) => [sign.path, sign.digest]), others])),
      levels: settings.rules,
      folder,
    },
    parts: looks.map(({ path, look }) => {
      const outline = whole.outlines.byFile.get(path);
      const procedure = outline && { id: outline.id, title: outline.title };
      return {
        path,
        ...(!signs.has(path) && { missing: true as const }),
        ...(procedure !== undefined && { procedure }),
        look,
      };
    }),
    texts,
  };
}

/** A batch after the other, so that only a few procedures are in memory in full at a time. */
async function lookInBatches(
  files: SignedFiles,
  own: readonly string[],
): Promise<{
  readonly all: readonly { readonly path: string; readonly look: Look }[];
  readonly whole: Whole;
  readonly settings: ManualSettings;
}> {
  const machines = await machinesIn(files);
  const share = new Share();
  const lengths = new Map(files.signs.map(({ path, length }) => [path, length]));
  const batches = inBatches(own.map((path) => ({ path, length: lengths.get(path) ?? 0 })));
  const all: { path: string; look: Look }[] = [];
  for (const batch of batches) {
    const { examination } = await new ShareFiles(files, machines, share).examine(batch);
    for (const path of batch) all.push({ path, look: examination.lookAt(path) });
  }
  const { whole, settings } = await new ShareFiles(files, machines, share).examine([]);
  return { all, whole, settings };
}

/** Without what falls whatever other shares say: most of what may be unused or lost is not. */
const undecided = (look: Look, settled: ReadonlySet<string>): Look => ({
  ...look,
  found: look.found.filter(({ unless = [] }) => !unless.some((key) => settled.has(key))),
});

/** A machine and its procedures; what names no machine stands first. */
function groupOf(path: string, machine: string | undefined): string {
  if (path === manualFile) return '';
  return machineFile.exec(path)?.[1] ?? machine ?? '';
}
