import type { Finding, Level } from '../../../schemas/finding.ts';
import type { Held, ProofFinding, ProofPage } from '../../astro/index.ts';
import type { Desk } from './proof-desk.ts';

/** As many are listed on each page; the page of findings has all. */
const mostListed = 200;

/** Of which file a page is, and why it shows an earlier state of it. */
export interface PageOf {
  readonly file: string | undefined;
  readonly held: Held | undefined;
}

/** The findings of the manual as a page of the proof shows them. */
export class PageFindings {
  readonly #desk: Desk;
  readonly #all: readonly ProofFinding[];

  constructor(desk: Desk) {
    this.#desk = desk;
    const hrefs = new Map(
      [...desk.linked.procedures.values()].map(({ procedure }) => [
        procedure.file,
        `procedures/${procedure.id}/index.html`,
      ]),
    );
    for (const [id, { file }] of desk.held) hrefs.set(file, `procedures/${id}/index.html`);
    const counts = new Map<string, number>();
    this.#all = desk.book.frame.report.findings.map((finding) => {
      const count = (counts.get(finding.file) ?? 0) + 1;
      counts.set(finding.file, count);
      const anchor = `proof-${count}`;
      const href = hrefs.get(finding.file);
      const sheet = href === undefined ? undefined : { href: `${href}#${anchor}`, text: '' };
      return { finding, anchor, sheet };
    });
  }

  of({ file, held }: PageOf, token: string, opens: boolean): ProofPage {
    const { edition, book, blocked } = this.#desk;
    const { error, warning, note } = book.frame.report.summary;
    return {
      token,
      edition,
      opens,
      counts: { error, warning, note },
      held: blocked ?? held,
      here: file === undefined ? [] : this.#all.filter(({ finding }) => finding.file === file),
      all: this.#all.toSorted(worstFirst).slice(0, mostListed),
    };
  }

  /** The places that the pages name, as they name them. */
  get places(): readonly Pick<Finding, 'file' | 'start'>[] {
    const { findings, waivers } = this.#desk.book.frame.report;
    const told = [...findings, ...waivers.flatMap(({ waived }) => waived)];
    return [...told.flatMap((finding) => [finding, ...finding.related]), ...waivers];
  }
}

const weight: Readonly<Record<Level, number>> = { error: 0, warning: 1, note: 2 };

const worstFirst = (a: ProofFinding, b: ProofFinding): number =>
  weight[a.finding.level] - weight[b.finding.level];
