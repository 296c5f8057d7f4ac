import { mkdir, writeFile } from 'node:fs/promises';
import { dirname } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { AstroIntegration } from 'astro';
import type { Book } from '../render/index.ts';
import { bundleScript } from './bundle-script.ts';
import { pageScript, searchScripts, sheetScript, variantsScript } from './links.ts';
import { searchIndexScript, searchPageScript } from './search-scripts.ts';

/**
 * Puts the scripts of the sheets, of the choice of a machine and of the search into the built site, and the index that the search
 * asks. They are plain scripts and no modules, since a browser loads no module for a page that is opened
 * from disk, and no data but in a script.
 */
export function clientScripts(book: Book): AstroIntegration {
  const [indexScript, searchScript] = searchScripts;
  return {
    name: 'tallybolt-scripts',
    hooks: {
      'astro:build:done': async ({ dir }) => {
        const write = async (path: string, text: string): Promise<void> => {
          const file = fileURLToPath(new URL(path, dir));
          await mkdir(dirname(file), { recursive: true });
          await writeFile(file, text);
        };
        await write(pageScript, await bundleScript('scripts/page.ts'));
        await write(sheetScript, await bundleScript('scripts/sheet.ts'));
        if (book.machinesDiffer.attributes.length > 0)
          await write(variantsScript, await bundleScript('scripts/variants.ts'));
        await write(searchScript, await searchPageScript());
        await write(indexScript, searchIndexScript(book));
      },
    },
  };
}
