import { type ShareReport, shareReportSchema } from '../../../schemas/share-report.ts';
import type { Look } from '../../rules/index.ts';
import type { TextFile } from '../../source/index.ts';

/** One share of a manual, checked. Plain data: what `shareReportSchema` describes. */
export interface CheckedShare extends Omit<ShareReport, 'parts' | 'texts'> {
  readonly parts: readonly CheckedPart[];
  /** The files that the findings show. */
  readonly texts: readonly TextFile[];
}

interface CheckedPart {
  readonly path: string;
  /** There is no such text, or nobody can read it. */
  readonly missing?: true | undefined;
  /** What can be had by its id. */
  readonly procedure?: { readonly id: string; readonly title: string } | undefined;
  readonly look: Look;
}

/** A share as it comes back from a file; undefined for other data. Keys keep the order in which they were written. */
export function shareFrom(json: unknown): CheckedShare | undefined {
  if (!isShareReport(json)) return undefined;
  return { ...json, parts: json.parts.map((part) => ({ ...part, look: lookFrom(part.look) })) };
}

const isShareReport = (json: unknown): json is ShareReport =>
  shareReportSchema.safeParse(json).success;

/** What is not in JSON is undefined here. */
function lookFrom(look: ShareReport['parts'][number]['look']): Look {
  return {
    ...look,
    found: look.found,
    performing: look.performing.map(({ key, by }) => ({ key, by: { ...by, when: by.when } })),
    waivers: look.waivers.map((one) => ({ ...one, item: one.item, until: one.until })),
  };
}
