import { join } from 'node:path';
import type { TextDocument } from 'vscode-languageserver-textdocument';
import type { Inspection } from '../report/index.ts';
import type { ManualFiles } from '../source/index.ts';
import { Desk } from './desk.ts';
import { manualFolderOf, pathIn, pathOf, uriOf } from './file-address.ts';
import { Page } from './page.ts';

/** What the workbench needs of the outside. */
export interface WorkbenchTools {
  /** Reads the folder of a manual; throws where it is none. */
  readonly readFolder: (folder: string) => Promise<ManualFiles>;
  /** Makes the check of one manual, which may remember what it saw. */
  readonly newCheck: () => (files: ManualFiles) => Inspection;
  readonly openDocuments: () => readonly TextDocument[];
}

/** A file on a desk. */
export interface Spot {
  readonly desk: Desk;
  readonly folder: string;
  /** Path of the file in the manual. */
  readonly file: string;
}

interface Table {
  readonly desk: Desk;
  isStale: boolean;
  reading: Promise<void> | undefined;
}

/** The manuals that the editor has files of open, each on its desk. */
export class Workbench {
  readonly #tools: WorkbenchTools;
  readonly #tables = new Map<string, Table>();

  constructor(tools: WorkbenchTools) {
    this.#tools = tools;
  }

  get folders(): readonly string[] {
    return [...this.#tables.keys()];
  }

  /** Where a file lies; undefined for texts outside of every manual. Reads its manual where that is new or stale. */
  async spotOf(uri: string): Promise<Spot | undefined> {
    const path = pathOf(uri);
    const folder = path === undefined ? undefined : manualFolderOf(path);
    if (path === undefined || folder === undefined) return undefined;
    const desk = await this.deskOf(folder);
    return desk && { desk, folder, file: pathIn(folder, path) };
  }

  /** The desk of a manual as it is by now; undefined, and forgotten, where the folder is none any more. */
  async deskOf(folder: string): Promise<Desk | undefined> {
    let table = this.#tables.get(folder);
    if (table === undefined) {
      table = { desk: new Desk(this.#tools.newCheck()), isStale: true, reading: undefined };
      this.#tables.set(folder, table);
    }
    while (table.isStale || table.reading !== undefined) {
      table.reading ??= this.#read(folder, table);
      await table.reading;
    }
    if (this.#tables.get(folder) !== table) return undefined;
    this.#layOpen(folder, table.desk);
    return table.desk;
  }

  /** A file of the manual, with its positions. */
  page({ desk, folder }: Pick<Spot, 'desk' | 'folder'>, file: string): Page {
    const path = join(folder, file);
    const open = this.#tools.openDocuments().find(({ uri }) => pathOf(uri) === path);
    const uri = open?.uri ?? uriOf(path);
    return new Page(uri, open?.getText() ?? desk.textOf(file) ?? '', open?.version);
  }

  /** A file was closed in the editor: what lies on disk counts again. */
  closed(uri: string): void {
    const path = pathOf(uri);
    for (const [folder, table] of this.#tables) {
      if (path === undefined || !table.desk.isOpen(pathIn(folder, path))) continue;
      table.desk.close(pathIn(folder, path));
      table.isStale = true;
    }
  }

  /** Something changed on disk. The text of a file that is open counts as the editor has it. */
  changedOnDisk(changes: readonly { readonly uri: string; readonly isContent: boolean }[]): void {
    for (const [folder, { desk }] of this.#tables) {
      const isNews = changes.some(({ uri, isContent }) => {
        const path = pathOf(uri);
        const file = path === undefined ? undefined : pathIn(folder, path);
        if (file === undefined || file.startsWith('..')) return false;
        return !(isContent && desk.isOpen(file) && desk.hasText(file));
      });
      if (isNews) this.#forgetReading(folder);
    }
  }

  /** A file of a manual was opened or saved, and others of it may have changed: for editors that watch no files. */
  changedNear(uri: string): void {
    const path = pathOf(uri);
    const folder = path === undefined ? undefined : manualFolderOf(path);
    if (folder !== undefined) this.#forgetReading(folder);
  }

  /** Before the next answer the folder is read again. */
  #forgetReading(folder: string): void {
    const table = this.#tables.get(folder);
    if (table !== undefined) table.isStale = true;
  }

  async #read(folder: string, table: Table): Promise<void> {
    table.isStale = false;
    try {
      table.desk.put(await this.#tools.readFolder(folder));
    } catch {
      this.#tables.delete(folder);
    } finally {
      table.reading = undefined;
    }
  }

  /** What is open in the editor and lies in this manual, and nothing else, counts instead of what lies on disk. */
  #layOpen(folder: string, desk: Desk): void {
    const open = new Map<string, string>();
    for (const document of this.#tools.openDocuments()) {
      const path = pathOf(document.uri);
      if (path !== undefined && manualFolderOf(path) === folder)
        open.set(pathIn(folder, path), document.getText());
    }
    for (const file of desk.openFiles) if (!open.has(file)) desk.close(file);
    for (const [file, text] of open) desk.open(file, text);
  }
}
