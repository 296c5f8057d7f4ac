import { readFile, stat } from 'node:fs/promises';
import { createServer } from 'node:http';
import { extname, join } from 'node:path';

/** A folder served on this machine, as any plain web server would serve it. */
export interface FolderServer {
  /** With a slash at the end. */
  readonly address: string;
  close(): Promise<void>;
}

const types: Readonly<Record<string, string>> = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript',
  '.css': 'text/css',
  '.svg': 'image/svg+xml',
  '.json': 'application/json',
  '.csv': 'text/csv',
};

/** `folder` is asked at each request, so that another edition can take its place. */
export async function serveFolder(folder: () => string): Promise<FolderServer> {
  const server = createServer(async ({ url = '/' }, answer) => {
    const path = decodeURIComponent(new URL(url, 'http://localhost').pathname);
    const asked = join(folder(), path);
    const found = await stat(asked).catch(() => undefined);
    const file = found?.isDirectory() ? join(asked, 'index.html') : asked;
    const body = await readFile(file).catch(() => undefined);
    if (body === undefined) return answer.writeHead(404).end();
    const type = types[extname(file)] ?? 'application/octet-stream';
    return answer.writeHead(200, { 'content-type': type, 'cache-control': 'no-cache' }).end(body);
  });
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  const bound = server.address();
  if (bound === null || typeof bound === 'string') throw new Error('the server has no port');
  return {
    address: `http://127.0.0.1:${bound.port}/`,
    close: () =>
      new Promise((resolve) => {
        server.close(() => resolve());
        server.closeAllConnections();
      }),
  };
}
