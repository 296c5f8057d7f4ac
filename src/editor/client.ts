import type { ClientCapabilities } from 'vscode-languageserver/node';

/** What the editor at the other end can do. */
export interface Client {
  readonly hasRelated: boolean;
  readonly hasCodeDescriptions: boolean;
  readonly hasVersions: boolean;
  readonly hasSnippets: boolean;
  readonly hasDocumentChanges: boolean;
  readonly hasNestedSymbols: boolean;
  readonly watchesOnRequest: boolean;
  readonly refreshesInlays: boolean;
}

export function clientOf({ textDocument, workspace }: ClientCapabilities): Client {
  const shown = textDocument?.publishDiagnostics;
  return {
    hasRelated: shown?.relatedInformation === true,
    hasCodeDescriptions: shown?.codeDescriptionSupport === true,
    hasVersions: shown?.versionSupport === true,
    hasSnippets: textDocument?.completion?.completionItem?.snippetSupport === true,
    hasDocumentChanges: workspace?.workspaceEdit?.documentChanges === true,
    hasNestedSymbols: textDocument?.documentSymbol?.hierarchicalDocumentSymbolSupport === true,
    watchesOnRequest: workspace?.didChangeWatchedFiles?.dynamicRegistration === true,
    refreshesInlays: workspace?.inlayHint?.refreshSupport === true,
  };
}
