import {
  type CodeAction,
  CodeActionKind,
  type CompletionItem,
  CompletionItemKind,
  type DocumentSymbol,
  type FoldingRange,
  FoldingRangeKind,
  InsertTextFormat,
  SymbolKind,
  type TextDocumentEdit,
  type TextEdit,
  type WorkspaceEdit,
} from 'vscode-languageserver/node';
import type { Edit } from '../../schemas/finding.ts';
import type { Client } from './client.ts';
import type { Folding } from './foldings.ts';
import type { OutlineSymbol } from './outline-symbols.ts';
import type { Page } from './page.ts';
import type { Proposal } from './proposal.ts';
import type { QuickFix } from './quick-fixes.ts';

const completionKinds: Readonly<Record<Proposal['kind'], CompletionItemKind>> = {
  directive: CompletionItemKind.Function,
  attribute: CompletionItemKind.Property,
  item: CompletionItemKind.Variable,
  procedure: CompletionItemKind.Module,
  place: CompletionItemKind.Reference,
  value: CompletionItemKind.EnumMember,
  unit: CompletionItemKind.Unit,
};

export function completionItem(proposal: Proposal, page: Page, client: Client): CompletionItem {
  const { label, kind, detail, more, text, snippet, from, to, rank } = proposal;
  const isSnippet = client.hasSnippets && snippet !== undefined;
  const newText = isSnippet ? snippet : text;
  return {
    label,
    kind: completionKinds[kind],
    ...(detail !== undefined && { detail }),
    ...(more !== undefined && { documentation: { kind: 'markdown', value: more } }),
    insertTextFormat: isSnippet ? InsertTextFormat.Snippet : InsertTextFormat.PlainText,
    textEdit: { range: page.range(from, to), newText },
    filterText: text.startsWith('"') ? text : label,
    sortText: `${String(rank ?? 0).padStart(4, '0')} ${label}`,
  };
}

/** Edits of several files; those of an open one hold only for the version that was looked at. */
export function workspaceEdit(
  edits: readonly Edit[],
  pageOf: (file: string) => Page,
  client: Client,
): WorkspaceEdit {
  const byFile = [...Map.groupBy(edits, ({ file }) => file)].map(([file, own]) => {
    const page = pageOf(file);
    const changes = own.map(
      ({ start, end, text }): TextEdit => ({ range: page.range(start, end), newText: text }),
    );
    return { page, changes };
  });
  if (!client.hasDocumentChanges)
    return { changes: Object.fromEntries(byFile.map(({ page, changes }) => [page.uri, changes])) };
  return {
    documentChanges: byFile.map(({ page, changes }): TextDocumentEdit => {
      const { uri, version = null } = page;
      return { textDocument: { uri, version }, edits: changes };
    }),
  };
}

export function codeAction(
  { title, edits, isSafe }: QuickFix,
  pageOf: (file: string) => Page,
  client: Client,
): CodeAction {
  return {
    title,
    kind: CodeActionKind.QuickFix,
    isPreferred: isSafe,
    edit: workspaceEdit(edits, pageOf, client),
  };
}

const symbolKinds: Readonly<Record<OutlineSymbol['kind'], SymbolKind>> = {
  section: SymbolKind.Namespace,
  step: SymbolKind.Event,
  kind: SymbolKind.Class,
  item: SymbolKind.Variable,
};

export function documentSymbol(symbol: OutlineSymbol, page: Page): DocumentSymbol {
  const { name, detail, kind, from, to, nameFrom, nameTo, children } = symbol;
  return {
    name,
    ...(detail !== '' && { detail }),
    kind: symbolKinds[kind],
    range: page.range(from, to),
    selectionRange: page.range(nameFrom, nameTo),
    children: children.map((child) => documentSymbol(child, page)),
  };
}

/** What has one line only is nothing to fold. */
export function foldingRange({ from, to }: Folding, page: Page): readonly FoldingRange[] {
  const startLine = page.positionAt(from).line;
  const endLine = page.positionAt(to).line;
  return endLine > startLine ? [{ startLine, endLine, kind: FoldingRangeKind.Region }] : [];
}
