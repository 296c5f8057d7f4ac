import { createHash } from 'node:crypto';
import { readdir, readFile, readlink } from 'node:fs/promises';
import { join } from 'node:path';

/** A folder's files, links and their content in one line each, sorted: two folders of one print are the same. */
export async function printOfFolder(folder: string): Promise<string> {
  const entries = await readdir(folder, { recursive: true, withFileTypes: true });
  const lines = await Promise.all(
    entries
      .filter((entry) => !entry.isDirectory())
      .map(async (entry) => {
        const path = join(entry.parentPath, entry.name);
        const content = entry.isSymbolicLink()
          ? `link to ${await readlink(path)}`
          : await readFile(path);
        return `${path.slice(folder.length)} ${createHash('sha256').update(content).digest('hex')}`;
      }),
  );
  return lines.sort().join('\n');
}
