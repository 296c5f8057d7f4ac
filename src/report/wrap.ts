import stringWidth from 'string-width';

/**
 * Text in lines of at most `width` columns of a terminal, cut between words; lines after the first begin with
 * `indent`. A word that is longer stands alone. Without a width it is one line.
 */
export function wrap(text: string, width: number | undefined, indent: string): string {
  if (width === undefined || stringWidth(text) <= width) return text;
  const lines: string[] = [];
  let line = '';
  for (const [piece, , word = ''] of text.matchAll(/( *)([^ ]+)/g)) {
    if (line.trim() !== '' && stringWidth(line + piece) > width) {
      lines.push(line);
      line = indent + word;
    } else line += piece;
  }
  return [...lines, line].join('\n');
}
