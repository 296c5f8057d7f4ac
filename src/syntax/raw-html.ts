import type { Html } from 'mdast';
import type { Reading } from './reading.ts';

const comment = /<!---?>|<!--[\s\S]*?-->/g;
const longest = 80;

/** Tells HTML that is more than a comment. */
export function tellRawHtml(reading: Reading, node: Html): void {
  const html = node.value.replace(comment, '').trim();
  if (html === '') return;
  const [line = ''] = html.split(/[\r\n]/, 1);
  const shown = line.length > longest ? `${line.slice(0, longest - 1)}…` : line;
  reading.facts.push({ kind: 'raw-html', place: reading.placeOf(node), html: shown });
}
