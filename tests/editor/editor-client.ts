import { type ChildProcess, spawn } from 'node:child_process';
import { cpSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import {
  type ClientCapabilities,
  createProtocolConnection,
  type Diagnostic,
  DidChangeTextDocumentNotification,
  DidChangeWatchedFilesNotification,
  DidCloseTextDocumentNotification,
  DidOpenTextDocumentNotification,
  ExitNotification,
  type FileChangeType,
  InitializedNotification,
  InitializeRequest,
  type InitializeResult,
  LogMessageNotification,
  type Position,
  type ProtocolConnection,
  PublishDiagnosticsNotification,
  type PublishDiagnosticsParams,
  type Range,
  RegistrationRequest,
  ShutdownRequest,
  StreamMessageReader,
  StreamMessageWriter,
  type WorkspaceEdit,
} from 'vscode-languageserver/node';
import { TextDocument } from 'vscode-languageserver-textdocument';

const main = fileURLToPath(new URL('../../src/command/main.ts', import.meta.url));
const demo = fileURLToPath(new URL('../../content', import.meta.url));

/** A folder with the demo manual in it; `name` is what the folder is called. */
export function demoCopy(name = 'manual'): string {
  const folder = join(mkdtempSync(join(tmpdir(), 'tallybolt-editor-')), name);
  cpSync(demo, folder, { recursive: true });
  return folder;
}

export const removeCopy = (folder: string): void =>
  rmSync(join(folder, '..'), { recursive: true, force: true });

/** What a capable editor says of itself. */
const capable: ClientCapabilities = {
  general: { positionEncodings: ['utf-16'] },
  textDocument: {
    publishDiagnostics: {
      relatedInformation: true,
      versionSupport: true,
      codeDescriptionSupport: true,
    },
    completion: { completionItem: { snippetSupport: false } },
    documentSymbol: { hierarchicalDocumentSymbolSupport: true },
    rename: { prepareSupport: true },
  },
  workspace: {
    workspaceEdit: { documentChanges: true },
    didChangeWatchedFiles: { dynamicRegistration: true },
  },
};

/** An editor at the other end of a language server that runs as a process of its own. */
export class EditorClient {
  readonly connection: ProtocolConnection;
  readonly shown = new Map<string, PublishDiagnosticsParams>();
  readonly watched: string[] = [];
  readonly logged: string[] = [];
  readonly ended: Promise<number | null>;
  errors = '';
  readonly #child: ChildProcess;
  readonly #documents = new Map<string, TextDocument>();
  readonly #waiting = new Set<() => void>();

  constructor() {
    const child = spawn(process.execPath, [main, 'serve-editor'], { stdio: 'pipe' });
    this.#child = child;
    this.ended = new Promise((resolve) => child.on('exit', resolve));
    child.stderr.on('data', (data) => {
      this.errors += String(data);
    });
    this.connection = createProtocolConnection(
      new StreamMessageReader(child.stdout),
      new StreamMessageWriter(child.stdin),
    );
    this.connection.onNotification(PublishDiagnosticsNotification.type, (params) => {
      this.shown.set(params.uri, params);
      for (const look of this.#waiting) look();
    });
    this.connection.onNotification(LogMessageNotification.type, ({ message }) => {
      this.logged.push(message);
    });
    this.connection.onRequest(RegistrationRequest.type, ({ registrations }) => {
      for (const one of registrations) this.watched.push(JSON.stringify(one));
    });
    this.connection.listen();
  }

  async start(capabilities: ClientCapabilities = capable): Promise<InitializeResult> {
    const result = await this.connection.sendRequest(InitializeRequest.type, {
      processId: process.pid,
      rootUri: null,
      capabilities,
    });
    await this.connection.sendNotification(InitializedNotification.type, {});
    return result;
  }

  /** Shuts the server down as an editor does; answers its exit code. */
  async stop(): Promise<number | null> {
    await this.connection.sendRequest(ShutdownRequest.type);
    await this.connection.sendNotification(ExitNotification.type);
    return this.ended;
  }

  kill(): void {
    this.#child.kill();
  }

  /** Opens a file, with its text on disk or another one. Answers its address. */
  async open(path: string, text?: string, uri = pathToFileURL(path).href): Promise<string> {
    const content = text ?? readFileSync(path, 'utf8').replace(/^\uFEFF/, '');
    const languageId = path.endsWith('.md') ? 'markdown' : 'yaml';
    const document = TextDocument.create(uri, languageId, 1, content);
    this.#documents.set(uri, document);
    await this.connection.sendNotification(DidOpenTextDocumentNotification.type, {
      textDocument: { uri, languageId, version: 1, text: content },
    });
    return uri;
  }

  async close(uri: string): Promise<void> {
    this.#documents.delete(uri);
    await this.connection.sendNotification(DidCloseTextDocumentNotification.type, {
      textDocument: { uri },
    });
  }

  text(uri: string): string {
    return this.document(uri).getText();
  }

  document(uri: string): TextDocument {
    const document = this.#documents.get(uri);
    if (document === undefined) throw new Error(`${uri} is not open`);
    return document;
  }

  /** Types in place of what stands between two offsets. */
  async type(uri: string, start: number, end: number, text: string): Promise<number> {
    const document = this.document(uri);
    const version = document.version + 1;
    const range = { start: document.positionAt(start), end: document.positionAt(end) };
    const contentChanges = [{ range, text }];
    TextDocument.update(document, contentChanges, version);
    await this.connection.sendNotification(DidChangeTextDocumentNotification.type, {
      textDocument: { uri, version },
      contentChanges,
    });
    return version;
  }

  /** Types `text` in place of the one place where `found` stands. */
  async replace(uri: string, found: string, text: string): Promise<number> {
    const start = this.offset(uri, found);
    return this.type(uri, start, start + found.length, text);
  }

  offset(uri: string, found: string): number {
    const start = this.text(uri).indexOf(found);
    if (start < 0) throw new Error(`${found} does not stand in ${uri}`);
    return start;
  }

  /** The position so many units behind where `found` begins. */
  at(uri: string, found: string, behind = 0): Position {
    return this.document(uri).positionAt(this.offset(uri, found) + behind);
  }

  slice(uri: string, range: Range): string {
    return this.document(uri).getText(range);
  }

  async changedOnDisk(path: string, type: FileChangeType): Promise<void> {
    await this.connection.sendNotification(DidChangeWatchedFilesNotification.type, {
      changes: [{ uri: pathToFileURL(path).href, type }],
    });
  }

  /** Waits until what is shown of a file is as wanted. */
  async until(
    uri: string,
    isWanted: (diagnostics: readonly Diagnostic[], params: PublishDiagnosticsParams) => boolean,
    patience = 45_000,
  ): Promise<readonly Diagnostic[]> {
    return new Promise((resolve, reject) => {
      const look = (): void => {
        const params = this.shown.get(uri);
        if (params === undefined || !isWanted(params.diagnostics, params)) return;
        clearTimeout(timer);
        this.#waiting.delete(look);
        resolve(params.diagnostics);
      };
      const timer = setTimeout(() => {
        this.#waiting.delete(look);
        reject(
          new Error(
            `never shown as wanted: ${JSON.stringify(this.shown.get(uri))} ${this.errors} ${this.logged.join()}`,
          ),
        );
      }, patience);
      this.#waiting.add(look);
      look();
    });
  }

  codes(uri: string): readonly unknown[] {
    return (this.shown.get(uri)?.diagnostics ?? []).map(({ code }) => code);
  }
}

/** Writes the edits of the server into the files, as an editor that saves them. */
export function applyToDisk(edit: WorkspaceEdit): readonly string[] {
  const byFile = (edit.documentChanges ?? []).flatMap((change) => {
    if (!('textDocument' in change)) throw new Error('only edits of texts are expected');
    return [{ uri: change.textDocument.uri, edits: change.edits }];
  });
  return byFile.map(({ uri, edits }) => {
    const path = fileURLToPath(uri);
    const source = readFileSync(path, 'utf8');
    const mark = source.startsWith('\uFEFF') ? '\uFEFF' : '';
    const document = TextDocument.create(uri, '', 1, source.slice(mark.length));
    const plain = edits.map((one) => {
      if (!('newText' in one)) throw new Error('only plain edits are expected');
      return one;
    });
    writeFileSync(path, mark + TextDocument.applyEdits(document, plain));
    return path;
  });
}

export const filesBelow = (folder: string): readonly string[] =>
  readdirSync(folder, { recursive: true, encoding: 'utf8' });
