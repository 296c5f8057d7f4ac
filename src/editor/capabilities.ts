import {
  CodeActionKind,
  type InitializeResult,
  PositionEncodingKind,
  TextDocumentSyncKind,
} from 'vscode-languageserver/node';

/** What the server can do. */
export function answerTo(version: string): InitializeResult {
  return {
    capabilities: {
      positionEncoding: PositionEncodingKind.UTF16,
      textDocumentSync: {
        openClose: true,
        change: TextDocumentSyncKind.Incremental,
        save: { includeText: false },
      },
      completionProvider: { triggerCharacters: [':', '{', '=', '"', ' ', ',', '#', '['] },
      hoverProvider: true,
      definitionProvider: true,
      referencesProvider: true,
      renameProvider: { prepareProvider: true },
      codeActionProvider: { codeActionKinds: [CodeActionKind.QuickFix] },
      documentSymbolProvider: true,
      foldingRangeProvider: true,
      inlayHintProvider: true,
    },
    serverInfo: { name: 'tallybolt', version },
  };
}
