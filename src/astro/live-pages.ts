import { symlink } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { experimental_AstroContainer as Container } from 'astro/container';
import type { OpenBook } from '../render/index.ts';
import { type LiveBook, liveBook, liveBookName } from './live-book.ts';
import { pageOptions } from './page-options.ts';
import type { ProofPage } from './proof-page.ts';

/** A page to be made: its file below `site/`, the address that it has, and what it is given. */
export interface PageAsked {
  /** `pages/charts.astro` */
  readonly file: string;
  /** From the site's root, with slashes at both ends. */
  readonly path: string;
  readonly props: Readonly<Record<string, unknown>>;
  readonly book: OpenBook;
  readonly proof: ProofPage;
}

export interface LivePages {
  /** The whole HTML of a page. Pages are made one after the other. */
  render(page: PageAsked): Promise<string>;
  /** What the page's file says to make for each of its addresses, where it stands for several. */
  paths(file: string, book: OpenBook): Promise<readonly PathOfPage[]>;
  close(): Promise<void>;
}

export interface PathOfPage {
  readonly params: Readonly<Record<string, string>>;
  readonly props: Readonly<Record<string, unknown>>;
}

/**
 * The site's own pages, each made when it is asked for. `site` is the folder of Astro's sources and `workDir` an
 * empty one, at which Astro looks for its packages; nothing is written but there.
 */
export async function livePages(site: string, workDir: string): Promise<LivePages> {
  const [{ getViteConfig }, { createServer }] = await Promise.all([
    import('astro/config'),
    import('vite'),
  ]);
  await symlink(packagesFolder(), join(workDir, 'node_modules'), 'junction');
  const config = await getViteConfig(
    {
      root: workDir,
      cacheDir: join(workDir, 'vite'),
      appType: 'custom',
      server: { middlewareMode: true, watch: null, hmr: false, ws: false },
      optimizeDeps: { noDiscovery: true, include: [] },
    },
    {
      configFile: false,
      root: workDir,
      srcDir: site,
      cacheDir: join(workDir, 'cache'),
      ...pageOptions,
      logLevel: 'silent',
      vite: { plugins: [liveBook()] },
    },
  )({ mode: 'production', command: 'serve' });
  const server = await createServer({ ...config, configFile: false });
  const astro = await server.ssrLoadModule('astro/container');
  const containers: typeof Container = astro.experimental_AstroContainer;
  const container = await containers.create();
  const bookModule = await server.ssrLoadModule(liveBookName);
  const show: LiveBook['show'] = bookModule.show;

  let last: Promise<unknown> = Promise.resolve();
  const inTurn = <T>(work: () => Promise<T>): Promise<T> => {
    const next = last.then(work, work);
    last = next;
    return next;
  };
  return {
    render: ({ file, path, props, book, proof }) =>
      inTurn(async () => {
        show(book);
        const { default: page } = await server.ssrLoadModule(join(site, file));
        return await container.renderToString(page, {
          partial: false,
          routeType: 'page',
          request: new Request(new URL(path, 'http://127.0.0.1')),
          props: { ...props },
          locals: { proof },
        });
      }),
    paths: (file, book) =>
      inTurn(async () => {
        show(book);
        const { getStaticPaths } = await server.ssrLoadModule(join(site, file));
        return await getStaticPaths();
      }),
    close: () => server.close(),
  };
}

/** The folder from which Astro's packages load: it looks for them at its root. */
function packagesFolder(): string {
  return dirname(dirname(fileURLToPath(import.meta.resolve('astro/package.json'))));
}
