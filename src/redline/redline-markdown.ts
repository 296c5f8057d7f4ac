import type { ListItem, PhrasingContent, RootContent } from 'mdast';
import { gfmToMarkdown } from 'mdast-util-gfm';
import { toMarkdown } from 'mdast-util-to-markdown';
import type { Finding } from '../../schemas/finding.ts';
import type { Change, Redline } from '../../schemas/redline.ts';
import {
  folded,
  listed,
  listItem,
  markdownSentence,
  markdownWords as plain,
} from '../report/index.ts';
import { countsWords, grouped, type Home } from './grouped.ts';
import {
  performersWords,
  placeOf,
  revisionWords,
  sideWords,
  stepWords,
  touchesWords,
} from './told-place.ts';

/** What lists those for which there is no room here. */
const all = '`--format page`';

/** A redline for a pull request, in GitHub Flavored Markdown. Authors' words stay words in it. */
export function redlineAsMarkdown(redline: Redline): string {
  const { risks, others, words } = grouped(redline);
  const { manual, before, after, findings } = redline;
  const content: RootContent[] = [
    { type: 'heading', depth: 2, children: [plain(`What changed in ${manual.title}`)] },
    paragraph(plain(`${sideWords(before)} → ${sideWords(after)}`)),
    paragraph(strong(countsWords(redline))),
    ...risks.flatMap(({ title, why, changes }) => [
      heading(title),
      paragraph({ type: 'emphasis', children: [plain(why)] }),
      ...listed(
        changes.map((change) => item(change, true, performersWords(change, redline))),
        all,
      ),
    ]),
    ...others.flatMap((home) => [
      heading(homeWords(home, redline)),
      ...listed(
        home.changes.map((change) => item(change, false)),
        all,
      ),
    ]),
    ...folded(
      'Words only',
      words.flatMap(({ changes }) => changes.map((one) => item(one, true))),
      all,
    ),
    ...folded('New findings of the check', findings.new.map(findingItem), all),
    ...folded('Findings of the check that are gone', findings.gone.map(findingItem), all),
  ];
  return toMarkdown(
    { type: 'root', children: content },
    { bullet: '-', extensions: [gfmToMarkdown()] },
  );
}

const strong = (text: string): PhrasingContent => ({ type: 'strong', children: [plain(text)] });
const code = (value: string): PhrasingContent => ({ type: 'inlineCode', value });

const paragraph = (...children: PhrasingContent[]): RootContent => ({
  type: 'paragraph',
  children,
});

const heading = (text: string): RootContent => ({
  type: 'heading',
  depth: 3,
  children: [plain(text)],
});

function homeWords({ kind, id }: Home, { procedures }: Redline): string {
  if (kind === 'manual') return 'The manual';
  if (kind === 'machine') return `Catalogue of ${id}`;
  const procedure = procedures.find((one) => one.id === id);
  return procedure === undefined ? id : `${procedure.title} (${revisionWords(procedure)})`;
}

/** Where, what, and what it reaches. */
function item(change: Change, namesHome: boolean, performers = ''): ListItem {
  const place = placeOf(change);
  const step = stepWords(change);
  const home = namesHome ? (change.procedure ?? change.machine) : undefined;
  const where = [...(home === undefined ? [] : [home]), ...(step === undefined ? [] : [step])];
  const touches = touchesWords(change);
  return listItem([
    ...(where.length === 0 ? [] : [strong(where.join(', ')), plain(': ')]),
    plain(change.message),
    ...(place === undefined ? [] : [plain(' '), code(`${place.file}:${place.line}`)]),
    ...(place?.isOld === true ? [plain(' (before)')] : []),
    ...(touches === '' ? [] : [plain(`. Reaches ${touches}`)]),
    ...(performers === '' ? [] : [plain(`; ${performers}`)]),
  ]);
}

const findingItem = ({ rule, level, file, start, message }: Finding): ListItem =>
  listItem([
    strong(level),
    plain(' '),
    code(rule),
    plain(' '),
    code(`${file}:${start.line}`),
    plain(' '),
    ...markdownSentence(message),
  ]);
