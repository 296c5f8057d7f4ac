import type { Finding, Level } from '../../schemas/finding.ts';
import type { PageLink } from '../render/index.ts';

/** What a page of the proof shows beside what is published: findings, and the way to the files. */
export interface ProofPage {
  /** Sent along with what the page asks of the proof, so that no other page can ask it. */
  readonly token: string;
  /** The check that the page is of; rises by one with each. */
  readonly edition: number;
  /** True where a place opens in the writer's editor; otherwise it is copied. */
  readonly opens: boolean;
  readonly counts: Readonly<Record<Level, number>>;
  /** Why the page shows an earlier state; undefined where it shows the files as they are. */
  readonly held: Held | undefined;
  /** Those of the page's own file, shown at their steps. */
  readonly here: readonly ProofFinding[];
  /** Those of the whole manual, errors first; the list is cut where it grows too long to read. */
  readonly all: readonly ProofFinding[];
}

export interface Held {
  readonly words: string;
  readonly advice: string | undefined;
}

export interface ProofFinding {
  readonly finding: Finding;
  /** Id of its note on the page of its sheet. */
  readonly anchor: string;
  /** Its note on its sheet, where it has one. */
  readonly sheet: PageLink | undefined;
}

/** A page in the place of a sheet that is not there. */
export interface MissingSheet {
  readonly words: string;
  /** Sheets that may be meant. */
  readonly links: readonly PageLink[];
}

/** `procedures/drain.md:12:4`, as a page shows a place and sends it back to have it opened. */
export const placeText = ({ file, start }: Pick<Finding, 'file' | 'start'>): string =>
  `${file}:${start.line}:${start.column}`;
