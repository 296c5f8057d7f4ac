import type { Place } from '../../../schemas/finding.ts';
import type { Draft, Rule } from '../rule.ts';

export const rule: Rule = {
  id: 'raw-html',
  family: 'form',
  level: 'error',
  *check(examined): Generator<Draft> {
    let open: { readonly name: string; readonly place: Place } | undefined;
    for (const { place, html } of examined.facts('raw-html')) {
      // The closing tag of an element that was just told is the same slip.
      const [, slash, name = ''] = /^<(\/?)([a-z][a-z0-9-]*)/i.exec(html) ?? [];
      const isEnd = slash === '/' && open?.name === name && open.place.file === place.file;
      open = slash === '' ? { name, place } : undefined;
      if (isEnd) continue;
      yield {
        place,
        message: `HTML cannot stand in a procedure: ${short(html)}`,
        data: { html },
        help: /^<!--/.test(html)
          ? 'Take the comment out, or keep it in the front matter behind a # sign.'
          : instead(html),
      };
    }
  },
};

/** What to write for the elements that writers miss most. */
const markdown: readonly (readonly [element: RegExp, advice: string])[] = [
  [/^<\/?(b|strong)\b/i, 'Write **bold** with two stars.'],
  [/^<\/?(i|em)\b/i, 'Write *emphasis* with one star.'],
  [/^<br\b/i, 'Put a backslash at the end of the line, or start a new paragraph.'],
  [
    /^<img\b/i,
    'Write `:::figure{src="figures/name.svg" alt="What the picture shows"}` on lines of its own.',
  ],
  [/^<\/?(table|tr|td|th)\b/i, 'Write the table with | between its cells.'],
  [/^<\/?(sub|sup)\b/i, 'Write the sign itself, such as ² or ₂.'],
  [/^<a\b/i, 'Write [the words](address).'],
];

function instead(html: string): string {
  const known = markdown.find(([element]) => element.test(html));
  return (
    known?.[1] ?? 'Write it in Markdown, or put a backslash before the < if it is to be printed.'
  );
}

const short = (html: string): string => {
  const line = html.split('\n', 1)[0] ?? '';
  return line.length > 40 ? `${line.slice(0, 40)}…` : line;
};
