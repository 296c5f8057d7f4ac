import type { Plugin } from 'vite';
import { manualServer, type ServedManual } from './manual-server.ts';

/** A Vite plugin that has the development server show a manual. It answers before Astro, which knows no page of it. */
export function manualInDev(served: ServedManual): Plugin {
  return {
    name: 'tallybolt-manual',
    apply: 'serve',
    configureServer: ({ watcher, middlewares }) => {
      const { changed, answer } = manualServer(served);
      watcher.add(served.folder);
      watcher.on('all', (_, file) => changed(file));
      middlewares.use(answer);
    },
  };
}
