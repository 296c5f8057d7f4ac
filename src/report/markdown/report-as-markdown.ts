import type { ListItem, RootContent } from 'mdast';
import { gfmToMarkdown } from 'mdast-util-gfm';
import { toMarkdown } from 'mdast-util-to-markdown';
import type { Report } from '../../../schemas/report.ts';
import { countsAsText } from '../summary.ts';
import { findingItem, goneItem } from './finding-item.ts';
import { folded, listed } from './lists.ts';
import { subjectTable } from './subject-table.ts';
import { plain, wordsIn } from './words-in.ts';

/** What lists those for which there is no room here. */
const all = '`tallybolt inspect`';

/** The report as a summary for a pull request, in GitHub Flavored Markdown. Authors' words stay words in it. */
export function reportAsMarkdown(report: Report): string {
  const { findings, waivers, baseline, manual } = report;
  const news = findings.filter(({ known }) => known !== true);
  const known = findings.filter((one) => one.known === true);
  const waived = waivers.flatMap(({ reason, waived }) =>
    waived.map((finding) => findingItem(finding, reason || 'no reason is given')),
  );
  const table = subjectTable(report);
  const content: RootContent[] = [
    { type: 'heading', depth: 2, children: [plain(manual.title)] },
    { type: 'paragraph', children: wordsIn(countsAsText(report)) },
    ...(table === undefined ? [] : [table]),
    ...section(
      baseline === undefined ? 'Findings' : 'New',
      news.map((one) => findingItem(one)),
    ),
    ...folded(
      'Known, as the baseline lists',
      known.map((one) => findingItem(one)),
      all,
    ),
    ...folded('Gone since the baseline was written', (baseline?.gone ?? []).map(goneItem), all),
    ...folded('Waived', waived, all),
  ];
  return toMarkdown(
    { type: 'root', children: content },
    { bullet: '-', extensions: [gfmToMarkdown()] },
  );
}

function section(title: string, items: readonly ListItem[]): RootContent[] {
  if (items.length === 0) return [];
  return [{ type: 'heading', depth: 3, children: [plain(title)] }, ...listed(items, all)];
}
