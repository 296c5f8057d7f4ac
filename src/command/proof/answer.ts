import type { ServerResponse } from 'node:http';

/** Answers with plain words. */
export function say(answer: ServerResponse, status: number, words: string): void {
  send(answer, status, 'text/plain; charset=utf-8', words);
}

/** Answers with a content, under what keeps it from doing more than being shown. */
export function send(
  answer: ServerResponse,
  status: number,
  type: string,
  content: string | Uint8Array,
): void {
  answer.writeHead(status, headers(type)).end(content);
}

/** Nothing that a writer types becomes a script, and no page of another address shows this one. */
function headers(type: string): Record<string, string> {
  const isPage = type.startsWith('text/html');
  return {
    'content-type': type,
    'content-security-policy': isPage
      ? "default-src 'none'; style-src 'self'; img-src 'self' data:; script-src 'self'; connect-src 'self'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'"
      : "default-src 'none'; style-src 'unsafe-inline'; sandbox",
    'x-content-type-options': 'nosniff',
    'cross-origin-resource-policy': 'same-origin',
    'referrer-policy': 'no-referrer',
    'cache-control': 'no-store',
  };
}
