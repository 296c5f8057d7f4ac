import type { ServerResponse } from 'node:http';

/** The open pages, each of which is told when there is something new (server-sent events, HTML standard). */
export class News {
  readonly #open = new Set<ServerResponse>();

  /** Adds a page, and tells it the edition of now, so that it catches up with what it missed. */
  add(answer: ServerResponse, edition: number): void {
    answer.writeHead(200, { 'content-type': 'text/event-stream' });
    answer.write(`retry: 500\n${message(edition)}`);
    this.#open.add(answer);
    answer.on('close', () => this.#open.delete(answer));
  }

  tell(edition: number): void {
    for (const answer of this.#open) answer.write(message(edition));
  }
}

const message = (edition: number): string => `data: ${edition}\n\n`;
