import type { Connection } from 'vscode-languageserver/node';
import type { Answers } from './answers.ts';

/** Asks about the file at an address; `none` is the answer for a text outside of every manual. */
export type Ask = <T>(uri: string, none: T, answer: (answers: Answers) => T) => Promise<T>;

/** Answers what an editor asks about one file. */
export function answerRequests(connection: Connection, ask: Ask): void {
  connection.onCompletion(({ textDocument, position }) =>
    ask(textDocument.uri, [], (answers) => answers.completion(position)),
  );
  connection.onHover(({ textDocument, position }) =>
    ask(textDocument.uri, undefined, (answers) => answers.hover(position)),
  );
  connection.onDefinition(({ textDocument, position }) =>
    ask(textDocument.uri, [], (answers) => answers.definition(position)),
  );
  connection.onReferences(({ textDocument, position, context }) =>
    ask(textDocument.uri, [], (answers) =>
      answers.references(position, context.includeDeclaration),
    ),
  );
  connection.onPrepareRename(({ textDocument, position }) =>
    ask(textDocument.uri, undefined, (answers) => answers.prepareRename(position)),
  );
  connection.onRenameRequest(({ textDocument, position, newName }) =>
    ask(textDocument.uri, undefined, (answers) => answers.rename(position, newName)),
  );
  connection.onCodeAction(({ textDocument, range, context }) =>
    ask(textDocument.uri, [], (answers) => answers.codeActions(range, context)),
  );
  connection.onDocumentSymbol(({ textDocument }) =>
    ask(textDocument.uri, [], (answers) => answers.symbols()),
  );
  connection.onFoldingRanges(({ textDocument }) =>
    ask(textDocument.uri, [], (answers) => answers.foldings()),
  );
  connection.languages.inlayHint.on(({ textDocument, range }) =>
    ask(textDocument.uri, [], (answers) => answers.inlays(range)),
  );
}
