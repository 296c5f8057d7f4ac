import { allBlocks, type LinkedManual, type LinkedProcedure, targetOf } from '../link/index.ts';
import { compareText } from '../source/index.ts';
import type { Figure } from './book.ts';
import { entryPicture } from './machine-page.ts';
import { figurePath } from './site-links.ts';

/** Every picture of the manual that its sheets and machine pages show, once, in order of its path; whether the files are there is not asked. */
export function figuresOf(manual: LinkedManual): readonly Figure[] {
  const entries = [...manual.manual.machines.values()].flatMap(({ items }) => [...items.values()]);
  const shown = new Set([
    ...[...manual.procedures.values()].flatMap(picturesOn),
    ...entries.flatMap((item) => entryPicture(item) ?? []),
  ]);
  return [...shown].sort(compareText).map((from) => ({ from, to: figurePath(from) }));
}

function picturesOn({ procedure }: LinkedProcedure): string[] {
  const blocks = [...allBlocks(procedure)];
  const written = [
    ...procedure.links.flatMap((link) => (link.isImage ? [link.url] : [])),
    ...blocks.flatMap((block) => (block.type === 'figure' ? [block.src.text] : [])),
  ];
  return written.flatMap((url) => {
    const target = targetOf(procedure.file, url);
    return target.kind === 'file' ? [target.path] : [];
  });
}
