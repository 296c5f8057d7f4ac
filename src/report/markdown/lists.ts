import type { ListItem, PhrasingContent, RootContent } from 'mdast';
import { wordsIn } from './words-in.ts';

/** A comment on a pull request may have 65,536 characters: of each sort no more than this are listed. */
const mostListed = 50;

export const listItem = (children: PhrasingContent[]): ListItem => ({
  type: 'listItem',
  spread: false,
  children: [{ type: 'paragraph', children }],
});

/** A list that is cut where it grows too long; `all` says what tells all of it. */
export function listed(items: readonly ListItem[], all: string): RootContent[] {
  const rest = items.length - mostListed;
  const children = items.slice(0, mostListed);
  const list: RootContent = { type: 'list', ordered: false, spread: false, children };
  if (rest <= 0) return [list];
  return [list, { type: 'paragraph', children: wordsIn(`And ${rest} more, which ${all} tells.`) }];
}

/** The same, closed until someone opens it. */
export function folded(title: string, items: readonly ListItem[], all: string): RootContent[] {
  if (items.length === 0) return [];
  const summary = `<details><summary>${title} (${items.length})</summary>`;
  return [
    { type: 'html', value: summary },
    ...listed(items, all),
    { type: 'html', value: '</details>' },
  ];
}
