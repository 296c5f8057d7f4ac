import type { RequestListener, Server } from 'node:http';
import { createServer } from 'node:http';
import { CannotRun } from '../cannot-run.ts';
import { reasonOf } from '../reason-of.ts';

export interface Listening {
  readonly server: Server;
  readonly port: number;
}

/** So many ports are tried, one after the other. */
const mostPorts = 50;

/** Listens on this machine only: at the port that is asked for, or the next one that is free. 0 is any. */
export async function listen(port: number, answer: RequestListener): Promise<Listening> {
  for (let tried = port; tried < port + mostPorts && tried <= 65_535; tried += 1) {
    const server = createServer(answer);
    const error = await bound(server, tried);
    if (error === undefined) {
      const address = server.address();
      if (address === null || typeof address === 'string')
        throw new Error('A server that listens at a port has none.');
      return { server, port: address.port };
    }
    if (error.code !== 'EADDRINUSE' && error.code !== 'EACCES')
      throw new CannotRun(`The proof cannot listen at port ${tried}: ${reasonOf(error)}.`);
  }
  throw new CannotRun(
    `No port from ${port} on is free.`,
    'Name another one with --port, such as --port 8700.',
  );
}

function bound(server: Server, port: number): Promise<NodeJS.ErrnoException | undefined> {
  return new Promise((resolve) => {
    server.once('error', resolve);
    server.listen(port, '127.0.0.1', () => {
      server.removeListener('error', resolve);
      resolve(undefined);
    });
  });
}
