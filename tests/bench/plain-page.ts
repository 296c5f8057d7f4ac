import type { TextFile } from '../../src/source/index.ts';

/** A procedure as a page of plain Markdown: its title and words, without front matter of ours and directives. */
export function plainPage({ text }: TextFile): string {
  const title = /^title: (.*)$/m.exec(text)?.[1] ?? 'Untitled';
  const body = text
    .replace(/^---\n[\s\S]*?\n---\n/, '')
    .replace(/^(\s*(?:\d+\. )?)::perform\{procedure=(\S+)\}$/gm, '$1See $2.')
    .replace(/^(\d+\. )::hazard\{.*\}\n\n\s+/gm, '$1')
    .replace(/^\s*:{2,3}(?:\w+\{.*\})?\n/gm, '')
    .replace(/:\w+\[([^\]]*)\]\{[^}]*\}/g, '$1');
  return `---\ntitle: ${title}\n---\n${body}`;
}
