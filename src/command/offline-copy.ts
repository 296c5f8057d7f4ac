import { createHash } from 'node:crypto';
import { readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { offlineScript } from '../astro/index.ts';
import { walkFolder } from './walk-folder.ts';

/** Where the script lies that keeps the site on a device: at the root, since it serves what lies below it. */
const path = 'offline.js';

/** Writes the script that keeps a finished site on a device, with all its files. */
export async function writeOfflineScript(site: string): Promise<void> {
  const { files } = await walkFolder(site);
  const marked = await Promise.all(
    files
      .filter((file) => file !== path)
      .map(async (file) => ({
        url: file.split('/').map(encodeURIComponent).join('/'),
        revision: createHash('sha256')
          .update(await readFile(join(site, file)))
          .digest('hex')
          .slice(0, 16),
      })),
  );
  await writeFile(join(site, path), await offlineScript(marked));
}
