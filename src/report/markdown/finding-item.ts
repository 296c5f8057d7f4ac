import type { ListItem } from 'mdast';
import type { KnownFinding } from '../../../schemas/baseline.ts';
import type { Finding } from '../../../schemas/finding.ts';
import { listItem } from './lists.ts';
import { plain, wordsIn } from './words-in.ts';

/** A finding as an item of a list: level, rule, place, words, and what to do or why it was let pass. */
export function findingItem(finding: Finding, reason?: string): ListItem {
  const { level, rule, file, start, message, when, help } = finding;
  const told = help === undefined ? [] : [plain('. '), ...wordsIn(help)];
  return listItem([
    { type: 'strong', children: [plain(level)] },
    plain(' '),
    { type: 'inlineCode', value: rule },
    plain(' '),
    { type: 'inlineCode', value: `${file}:${start.line}` },
    plain(' '),
    ...wordsIn(when === undefined ? message : `${message} (when ${when})`),
    ...(reason === undefined ? told : [plain(`. Waived: ${reason}`)]),
  ]);
}

/** A finding of the baseline that is gone. */
export function goneItem({ rule, procedure, file, says, when, count }: KnownFinding): ListItem {
  const words = when === undefined ? says : `${says} (when ${when})`;
  return listItem([
    { type: 'inlineCode', value: rule },
    plain(' '),
    { type: 'inlineCode', value: procedure ?? file ?? '' },
    plain(' '),
    ...wordsIn(count === 1 ? words : `${words}, ${count} times`),
  ]);
}
