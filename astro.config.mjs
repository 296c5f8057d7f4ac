import { defineConfig } from 'astro/config';
import { siteConfig } from './src/astro/site-config.ts';
import { checkFolder } from './src/command/check-folder.ts';
import { makeBook } from './src/render/index.ts';

// For `astro check` and `astro build` by hand. `tallybolt publish` does not read this file.
const { linked, report } = await checkFolder(process.env.TALLYBOLT_MANUAL ?? 'content');
const book = makeBook(linked, report, { draft: report.summary.error > 0 });

export default defineConfig({ ...siteConfig(book), outDir: './published' });
