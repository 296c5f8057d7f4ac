import { type Position, type Range, TextDocument } from 'vscode-languageserver-textdocument';

/**
 * One text with its positions as LSP counts them: lines and UTF-16 units from 0. An editor that opens a file does
 * not show its byte order mark, so that a text from disk is counted without it.
 */
export class Page {
  readonly uri: string;
  /** Of an open text; undefined for one from disk. */
  readonly version: number | undefined;
  readonly #document: TextDocument;
  readonly #skipped: number;

  constructor(uri: string, text: string, version?: number) {
    this.uri = uri;
    this.version = version;
    this.#skipped = version === undefined && text.startsWith('\uFEFF') ? 1 : 0;
    this.#document = TextDocument.create(uri, '', version ?? 0, text.slice(this.#skipped));
  }

  positionAt(offset: number): Position {
    return this.#document.positionAt(offset - this.#skipped);
  }

  offsetAt(position: Position): number {
    return this.#document.offsetAt(position) + this.#skipped;
  }

  range(from: number, to: number): Range {
    return { start: this.positionAt(from), end: this.positionAt(to) };
  }
}
