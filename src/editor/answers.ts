import {
  type CodeAction,
  type CodeActionContext,
  CodeActionKind,
  type CompletionItem,
  type Diagnostic,
  type DocumentSymbol,
  type FoldingRange,
  type Hover,
  type InlayHint,
  type Location,
  LSPErrorCodes,
  type Position,
  type Range,
  ResponseError,
  type WorkspaceEdit,
} from 'vscode-languageserver/node';
import type { Client } from './client.ts';
import { completeAt } from './complete-at.ts';
import { diagnosticOf } from './diagnostics.ts';
import { foldingsOf } from './foldings.ts';
import { hoverAt } from './hover-at.ts';
import { mentionAt, mentionsOf } from './mentions.ts';
import type { Mention } from './named.ts';
import { outlineOf } from './outline-symbols.ts';
import type { Page } from './page.ts';
import { quickFixes } from './quick-fixes.ts';
import { renamable, rename } from './rename.ts';
import { stillOut } from './still-out.ts';
import {
  codeAction,
  completionItem,
  documentSymbol,
  foldingRange,
  workspaceEdit,
} from './to-lsp.ts';
import type { Spot } from './workbench.ts';

/** What the answers need beside the desk. */
export interface AnswerTools {
  readonly client: Client;
  readonly pageOf: (file: string) => Page;
  readonly rulePage: (rule: string) => string | undefined;
  readonly ruleAddress: (rule: string) => string | undefined;
}

/** Answers about one file of a manual, in the terms of LSP. */
export class Answers {
  readonly #spot: Spot;
  readonly #tools: AnswerTools;
  readonly #page: Page;

  constructor(spot: Spot, tools: AnswerTools) {
    this.#spot = spot;
    this.#tools = tools;
    this.#page = tools.pageOf(spot.file);
  }

  completion(position: Position): CompletionItem[] {
    const { desk, file } = this.#spot;
    const found = completeAt(desk, file, this.#page.offsetAt(position));
    return found.map((one) => completionItem(one, this.#page, this.#tools.client));
  }

  hover(position: Position): Hover | undefined {
    const { desk, file } = this.#spot;
    const found = hoverAt(desk, file, this.#page.offsetAt(position), this.#tools.rulePage);
    return (
      found && {
        contents: { kind: 'markdown', value: found.text },
        range: this.#page.range(found.from, found.to),
      }
    );
  }

  definition(position: Position): Location[] {
    return this.#mentions(position)
      .filter(({ isDefinition }) => isDefinition)
      .map((mention) => this.#location(mention));
  }

  references(position: Position, withDefinition: boolean): Location[] {
    return this.#mentions(position)
      .filter(({ isDefinition }) => withDefinition || !isDefinition)
      .map((mention) => this.#location(mention));
  }

  prepareRename(position: Position): { range: Range; placeholder: string } {
    const { desk, file } = this.#spot;
    const found = renamable(desk, file, this.#page.offsetAt(position));
    if ('refused' in found) throw refusal(found.refused);
    return { range: this.#page.range(found.from, found.to), placeholder: found.text };
  }

  rename(position: Position, name: string): WorkspaceEdit {
    const { desk, file } = this.#spot;
    const { pageOf, client } = this.#tools;
    const found = rename(desk, file, this.#page.offsetAt(position), name);
    if ('refused' in found) throw refusal(found.refused);
    return workspaceEdit(found.edits, pageOf, client);
  }

  codeActions(
    { start, end }: Range,
    { diagnostics: shown, only }: CodeActionContext,
  ): CodeAction[] {
    const isAsked = only?.some((kind) => CodeActionKind.QuickFix.startsWith(kind)) ?? true;
    if (!isAsked) return [];
    const { desk, file } = this.#spot;
    const { client, pageOf } = this.#tools;
    const [from, to] = [this.#page.offsetAt(start), this.#page.offsetAt(end)];
    return quickFixes(desk, file, from, to).map((fix) => {
      const own = diagnosticOf(fix.finding, this.#tools);
      const isOwn = ({ code, message }: Diagnostic) => code === own.code && message === own.message;
      return { ...codeAction(fix, pageOf, client), diagnostics: shown.filter(isOwn) };
    });
  }

  symbols(): DocumentSymbol[] {
    const { desk, file } = this.#spot;
    return outlineOf(desk, file).map((one) => documentSymbol(one, this.#page));
  }

  foldings(): FoldingRange[] {
    const { desk, file } = this.#spot;
    return foldingsOf(desk, file).flatMap((one) => foldingRange(one, this.#page));
  }

  inlays({ start, end }: Range): InlayHint[] {
    const { desk, file } = this.#spot;
    const [from, to] = [this.#page.offsetAt(start), this.#page.offsetAt(end)];
    return stillOut(desk, file, from, to).map(({ offset, text, more }) => ({
      position: this.#page.positionAt(offset),
      label: text,
      paddingLeft: true,
      tooltip: { kind: 'markdown', value: more },
    }));
  }

  #mentions(position: Position): readonly Mention[] {
    const { desk, file } = this.#spot;
    const mention = mentionAt(desk, file, this.#page.offsetAt(position));
    return mention === undefined ? [] : mentionsOf(desk, mention.named);
  }

  #location({ place }: Mention): Location {
    const page = this.#tools.pageOf(place.file);
    return { uri: page.uri, range: page.range(place.start.offset, place.end.offset) };
  }
}

const refusal = (words: string): ResponseError<void> =>
  new ResponseError(LSPErrorCodes.RequestFailed, words);
