import type { Extension as FromMarkdown } from 'mdast-util-from-markdown';
import { gfmAutolinkLiteralFromMarkdown } from 'mdast-util-gfm-autolink-literal';
import { gfmFootnoteFromMarkdown } from 'mdast-util-gfm-footnote';
import { gfmStrikethroughFromMarkdown } from 'mdast-util-gfm-strikethrough';
import { gfmTableFromMarkdown } from 'mdast-util-gfm-table';
import { gfmTaskListItemFromMarkdown } from 'mdast-util-gfm-task-list-item';
import { gfmAutolinkLiteral } from 'micromark-extension-gfm-autolink-literal';
import { gfmFootnote } from 'micromark-extension-gfm-footnote';
import { gfmStrikethrough } from 'micromark-extension-gfm-strikethrough';
import { gfmTable } from 'micromark-extension-gfm-table';
import { gfmTaskListItem } from 'micromark-extension-gfm-task-list-item';

/** One part of GitHub Flavored Markdown. */
export interface GfmPart {
  readonly name: string;
  readonly syntax: ReturnType<typeof gfmTable>;
  readonly tree: FromMarkdown;
}

/** Each part with what a text must have somewhere before the part can mean anything in it. */
const parts: readonly (GfmPart & { readonly sign: RegExp })[] = [
  {
    name: 'links',
    // Also where a character reference or an escape may make one of these.
    sign: /www\.|https?:|[@\\]|&#?[a-z0-9]+;/i,
    syntax: gfmAutolinkLiteral(),
    tree: gfmAutolinkLiteralFromMarkdown(),
  },
  { name: 'footnotes', sign: /\[\^/, syntax: gfmFootnote(), tree: gfmFootnoteFromMarkdown() },
  { name: 'strikes', sign: /~/, syntax: gfmStrikethrough(), tree: gfmStrikethroughFromMarkdown() },
  { name: 'tables', sign: /\||:-|-:/, syntax: gfmTable(), tree: gfmTableFromMarkdown() },
  {
    name: 'tasks',
    sign: /\[[\sx]\]/i,
    syntax: gfmTaskListItem(),
    tree: gfmTaskListItemFromMarkdown(),
  },
];

/**
 * The parts that a text may use, of all that GitHub Flavored Markdown 0.29 has. Those that cannot mean anything in it
 * would cost time at every character and change nothing.
 */
export const gfmPartsFor = (text: string): readonly GfmPart[] =>
  parts.filter(({ sign }) => sign.test(text));
