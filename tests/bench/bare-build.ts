import { unified } from '@astrojs/markdown-remark';
import { build } from 'astro';

// Runs in a process of its own: builds the pages in a folder with nothing but Astro and its remark pipeline.
const [root = '.'] = process.argv.slice(2);
await build({
  root,
  configFile: false,
  markdown: { processor: unified() },
  logLevel: 'error',
});
