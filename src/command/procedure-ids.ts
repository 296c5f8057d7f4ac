import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { walkFolder } from './walk-folder.ts';

/** Id and title of each procedure in a folder, from the first lines of its file, sorted; none where there is no manual. */
export async function procedureIds(
  folder: string,
): Promise<readonly { readonly id: string; readonly title: string }[]> {
  const { files } = await walkFolder(folder).catch(() => ({ files: [] }));
  const texts = files.filter((path) => /^procedures\/.*\.md$/.test(path));
  const found = await Promise.all(
    texts.map(async (path) => {
      const text = await readFile(join(folder, path), 'utf8').catch(() => '');
      const [, front = ''] = /^\uFEFF?---\r?\n([\s\S]*?)^---/m.exec(text) ?? [];
      const id = fieldOf(front, 'procedure');
      return id === undefined ? [] : [{ id, title: fieldOf(front, 'title') ?? '' }];
    }),
  );
  return found.flat().sort((a, b) => (a.id < b.id ? -1 : 1));
}

/** A plain or quoted value of one line. */
function fieldOf(front: string, name: string): string | undefined {
  const [, value] = new RegExp(`^${name}:[ \\t]+(.+?)[ \\t]*\\r?$`, 'm').exec(front) ?? [];
  return value?.replace(/^(["'])(.*)\1$/, '$2');
}
