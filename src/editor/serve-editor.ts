import { hash } from 'node:crypto';
import {
  createConnection,
  DidChangeWatchedFilesNotification,
  FileChangeType,
  type InitializeResult,
  TextDocuments,
} from 'vscode-languageserver/node';
import { TextDocument } from 'vscode-languageserver-textdocument';
import { type Inspection, KeptInspection } from '../report/index.ts';
import type { ManualFiles } from '../source/index.ts';
import { answerRequests } from './answer-requests.ts';
import { Answers } from './answers.ts';
import { answerTo } from './capabilities.ts';
import { type Client, clientOf } from './client.ts';
import { uriOf } from './file-address.ts';
import { Teller } from './teller.ts';
import { Workbench } from './workbench.ts';

/** What the language server needs of the program around it. */
export interface EditorTools {
  readonly version: string;
  /** The day of a check, YYYY-MM-DD. */
  readonly today: () => string;
  readonly readFolder: (folder: string) => Promise<ManualFiles>;
  /** Path of the page of a rule; undefined where there is no such rule. */
  readonly rulePath: (rule: string) => string | undefined;
  readonly readText: (path: string) => string;
}

/** Serves an editor over two streams (LSP 3.17) until it says that it leaves. */
export function serveEditor(
  input: NodeJS.ReadableStream,
  output: NodeJS.WritableStream,
  tools: EditorTools,
): void {
  const connection = createConnection(input, output);
  const documents = new TextDocuments(TextDocument);
  let client: Client = clientOf({});
  const newCheck = (): ((files: ManualFiles) => Inspection) => {
    const kept = new KeptInspection(tools.version, (text) => hash('sha256', text, 'base64url'));
    return (files) => kept.inspect(files, { today: tools.today() });
  };
  const workbench = new Workbench({
    readFolder: tools.readFolder,
    newCheck,
    openDocuments: () => documents.all(),
  });
  const ruleAddress = (rule: string): string | undefined => {
    const path = tools.rulePath(rule);
    return path === undefined ? undefined : uriOf(path);
  };
  const rulePage = (rule: string): string | undefined => {
    const path = tools.rulePath(rule);
    return path === undefined ? undefined : `**${rule}**\n\n${tools.readText(path)}`;
  };
  const failed = (error: unknown): void =>
    connection.console.error(error instanceof Error ? (error.stack ?? error.message) : `${error}`);
  const teller = new Teller({ connection, workbench, client: () => client, ruleAddress, failed });

  connection.onInitialize(({ capabilities }): InitializeResult => {
    client = clientOf(capabilities);
    return answerTo(tools.version);
  });
  connection.onInitialized(async () => {
    if (!client.watchesOnRequest) return;
    await connection.client.register(DidChangeWatchedFilesNotification.type, {
      watchers: ['manual.yaml', 'machines/**', 'procedures/**', 'figures/**'].map((pattern) => ({
        globPattern: `**/${pattern}`,
      })),
    });
  });
  connection.onDidChangeWatchedFiles(({ changes }) => {
    workbench.changedOnDisk(
      changes.map(({ uri, type }) => ({ uri, isContent: type === FileChangeType.Changed })),
    );
    teller.soon();
    if (client.refreshesInlays) connection.languages.inlayHint.refresh();
  });
  const readAgain = (uri: string): void => {
    if (!client.watchesOnRequest) workbench.changedNear(uri);
  };
  documents.onDidOpen(({ document }) => readAgain(document.uri));
  documents.onDidSave(({ document }) => {
    readAgain(document.uri);
    teller.soon();
  });
  documents.onDidChangeContent(async ({ document }) => {
    await workbench.spotOf(document.uri).catch(failed);
    teller.soon();
  });
  documents.onDidClose(({ document }) => {
    workbench.closed(document.uri);
    teller.soon();
  });

  /** Answers of the file, `none` for a text outside of every manual. */
  const ask = async <T>(uri: string, none: T, answer: (answers: Answers) => T): Promise<T> => {
    const spot = await workbench.spotOf(uri);
    if (spot === undefined) return none;
    const pageOf = (file: string) => workbench.page(spot, file);
    return answer(new Answers(spot, { client, pageOf, rulePage, ruleAddress }));
  };
  answerRequests(connection, ask);
  documents.listen(connection);
  connection.listen();
}
