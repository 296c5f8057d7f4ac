import type { MissingSheet } from '../../astro/index.ts';
import type { PageLink } from '../../render/index.ts';
import { nearest } from '../../source/index.ts';
import type { Desk } from './proof-desk.ts';

/** What stands in the place of a sheet that is not there: whether it was, and which others may be meant. */
export function missingSheet(id: string, { linked, gone }: Desk): MissingSheet {
  const procedures = [...linked.procedures.values()];
  const before = gone.get(id);
  const sameFile = procedures.filter(({ procedure }) => procedure.file === before?.file);
  const sameTitle = procedures.filter(({ procedure }) => procedure.front.title === before?.title);
  const near = linked.procedures.get(nearest(id, linked.procedures.keys()) ?? '');
  const meant = new Set([...sameFile, ...sameTitle, ...(near === undefined ? [] : [near])]);
  const links = [...meant].map(
    ({ procedure }): PageLink => ({
      href: `procedures/${procedure.id}/index.html`,
      text: procedure.front.title,
    }),
  );
  return { words: wordsOf(), links };

  function wordsOf(): string {
    const [renamed] = [...sameFile, ...sameTitle];
    if (before === undefined) return `The manual has no procedure \`${id}\`.`;
    if (renamed === undefined)
      return `The procedure \`${id}\` is no longer in the manual; it stood in ${before.file}. When it comes back, this page shows it.`;
    return `The procedure \`${id}\` is now called \`${renamed.procedure.id}\`.`;
  }
}
