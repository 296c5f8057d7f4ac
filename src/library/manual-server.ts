import { rm } from 'node:fs/promises';
import type { IncomingMessage, ServerResponse } from 'node:http';
import { isAbsolute, relative } from 'node:path';
import sirv from 'sirv';
import { publishInto } from './publish-into.ts';

export interface ServedManual {
  readonly folder: string;
  /** Where its pages are written. */
  readonly out: string;
  /** Address of its pages on the server, with a slash at both ends. */
  readonly path: string;
  readonly logger: { info(message: string): void; error(message: string): void };
}

/** A request whose `url` others may have shortened by the base of the site. */
type Request = IncomingMessage & { readonly originalUrl?: string };

export interface ManualServer {
  /** Tells that a file was changed; those outside the manual do not matter. */
  changed(file: string): void;
  /** Answers requests for pages of the manual, and passes on all others. */
  answer(request: Request, response: ServerResponse, next: () => void): void;
}

/**
 * Serves a draft of a manual that is being written: the first request after a change publishes it again, the others wait for it.
 * Where that fails the fault is told, and the last good pages are served.
 */
export function manualServer({ folder, out, path, logger }: ServedManual): ManualServer {
  const files = sirv(out, { dev: true });
  let published: Promise<void> | undefined;
  const complain = (error: unknown): void =>
    logger.error(error instanceof Error ? error.message : String(error));
  const publish = async (): Promise<void> => {
    try {
      await publishInto(out, folder, true);
      logger.info(`The manual is shown as it stands, at ${path}`);
    } catch (error) {
      complain(error);
    }
  };
  // What an earlier run wrote is not shown as if it were this manual.
  let last = rm(out, { recursive: true, force: true }).catch(complain);
  return {
    changed: (file) => {
      const inside = relative(folder, file);
      if (inside !== '' && !inside.startsWith('..') && !isAbsolute(inside)) published = undefined;
    },
    answer: (request, response, next) => {
      const { url = '/', originalUrl = url } = request;
      if (`${originalUrl}/` === path) {
        response.writeHead(302, { location: path }).end();
        return;
      }
      if (!originalUrl.startsWith(path)) {
        next();
        return;
      }
      if (published === undefined) {
        published = last.then(publish);
        last = published;
      }
      published.then(() => {
        request.url = originalUrl.slice(path.length - 1);
        files(request, response, () => {
          request.url = url;
          next();
        });
      });
    },
  };
}
