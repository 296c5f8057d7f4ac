import type { Report } from '../../../schemas/report.ts';
import { compareText, type TextFile } from '../../source/index.ts';
import type { InspectOptions } from '../inspect.ts';
import { makeReport } from '../make-report.ts';
import type { CheckedShare } from './checked-share.ts';

/** A share and the name of the file in which it stands. */
export interface NamedShare {
  readonly name: string;
  readonly share: CheckedShare;
}

/** Why shares cannot be joined. */
export type JoinFault =
  /** Checked by another version than this one. */
  | { readonly kind: 'other-version'; readonly name: string; readonly version: string }
  /** Of another manual, or another state of it, than the first. */
  | { readonly kind: 'foreign'; readonly name: string; readonly first: string }
  /** Of a manual that lies elsewhere from where it was checked. */
  | { readonly kind: 'elsewhere'; readonly name: string; readonly first: string }
  /** Of a manual that was shared out in another number of shares. */
  | {
      readonly kind: 'other-count';
      readonly name: string;
      readonly of: number;
      readonly first: string;
    }
  | { readonly kind: 'doubled'; readonly number: number; readonly names: readonly string[] }
  | { readonly kind: 'missing'; readonly numbers: readonly number[] };

export interface Joined {
  readonly report: Report;
  /** Procedures that can be had by their id. */
  readonly procedures: readonly { readonly id: string; readonly file: string }[];
  readonly levels: CheckedShare['manual']['levels'];
  readonly folder: string;
  /** All texts of the manual, in order of path; empty where no finding shows them. */
  readonly texts: readonly TextFile[];
}

/** The report of the whole manual that `inspect` gives, of all its shares in any order. */
export function joinShares(
  shares: readonly [NamedShare, ...NamedShare[]],
  version: string,
  { today }: InspectOptions = {},
): { readonly value: Joined } | { readonly faults: readonly JoinFault[] } {
  const faults = faultsOf(shares, version);
  if (faults.length > 0) return { faults };
  const [{ share: first }] = shares;
  const parts = shares
    .flatMap(({ share }) => share.parts)
    .toSorted((a, b) => compareText(a.path, b.path));
  const procedures = parts.flatMap(({ path, procedure }) =>
    procedure === undefined ? [] : [{ ...procedure, file: path }],
  );
  const titles = new Map(procedures.map(({ id, title }) => [id, title]));
  const texts = new Map(shares.flatMap(({ share }) => share.texts.map((one) => [one.path, one])));
  const { title, levels, folder } = first.manual;
  const report = makeReport(
    parts.map(({ look }) => look),
    { title, version, levels, titleOf: (id) => titles.get(id) ?? id, today },
  );
  return {
    value: {
      report,
      procedures: procedures.map(({ id, file }) => ({ id, file })),
      levels,
      folder,
      texts: parts
        .filter(({ missing }) => missing !== true)
        .map(({ path }) => texts.get(path) ?? { path, text: '' }),
    },
  };
}

function faultsOf(shares: readonly [NamedShare, ...NamedShare[]], version: string): JoinFault[] {
  const [first] = shares;
  const { manual, share } = first.share;
  const foreign = shares.flatMap(({ name, share: one }): JoinFault[] => {
    const to = { name, first: first.name };
    if (one.tool.version !== version)
      return [{ kind: 'other-version', name, version: one.tool.version }];
    if (one.manual.digest !== manual.digest) return [{ kind: 'foreign', ...to }];
    if (one.manual.folder !== manual.folder) return [{ kind: 'elsewhere', ...to }];
    if (one.share.of !== share.of) return [{ kind: 'other-count', ...to, of: one.share.of }];
    return [];
  });
  // What is missing can be said only of shares that belong together.
  if (foreign.length > 0) return foreign;
  const byNumber = Map.groupBy(shares, (one) => one.share.share.number);
  const doubled = [...byNumber]
    .toSorted(([a], [b]) => a - b)
    .flatMap(([number, all]): JoinFault[] =>
      all.length < 2 ? [] : [{ kind: 'doubled', number, names: all.map(({ name }) => name) }],
    );
  const numbers = Array.from({ length: share.of }, (_, i) => i + 1).filter(
    (number) => !byNumber.has(number),
  );
  return [...doubled, ...(numbers.length > 0 ? [{ kind: 'missing' as const, numbers }] : [])];
}
