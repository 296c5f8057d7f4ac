import type { Connection, PublishDiagnosticsParams } from 'vscode-languageserver/node';
import type { Client } from './client.ts';
import { diagnosticOf } from './diagnostics.ts';
import type { Page } from './page.ts';
import type { Workbench } from './workbench.ts';

interface TellerTools {
  readonly connection: Connection;
  readonly workbench: Workbench;
  readonly client: () => Client;
  readonly ruleAddress: (rule: string) => string | undefined;
  readonly failed: (error: unknown) => void;
}

/** Tells the editor what the check finds, a short while after the last change; what is gone is taken back. */
export class Teller {
  readonly #tools: TellerTools;
  /** What was told of each file last, by its address. */
  readonly #told = new Map<string, Map<string, string>>();
  #timer: NodeJS.Timeout | undefined;
  #isTelling = false;
  #cost = 0;

  constructor(tools: TellerTools) {
    this.#tools = tools;
  }

  /** Soon: sooner where a check takes little time. */
  soon(): void {
    clearTimeout(this.#timer);
    this.#timer = setTimeout(() => void this.#tell(), this.#cost < 100 ? 15 : 250);
  }

  async #tell(): Promise<void> {
    if (this.#isTelling) return this.soon();
    this.#isTelling = true;
    try {
      const { workbench } = this.#tools;
      for (const folder of new Set([...workbench.folders, ...this.#told.keys()]))
        await this.#tellFolder(folder);
    } catch (error) {
      this.#tools.failed(error);
    } finally {
      this.#isTelling = false;
    }
  }

  async #tellFolder(folder: string): Promise<void> {
    const { workbench, connection } = this.#tools;
    const isKnown = workbench.folders.includes(folder);
    const desk = isKnown ? await workbench.deskOf(folder) : undefined;
    const before = this.#told.get(folder) ?? new Map<string, string>();
    const now = new Map<string, string>();
    if (desk !== undefined) {
      const begun = performance.now();
      const { findings } = desk.inspection.report;
      this.#cost = performance.now() - begun;
      const pages = new Map<string, Page>();
      const pageOf = (file: string): Page => {
        const page = pages.get(file) ?? workbench.page({ desk, folder }, file);
        pages.set(file, page);
        return page;
      };
      const client = this.#tools.client();
      const telling = { client, pageOf, ruleAddress: this.#tools.ruleAddress };
      const byFile = Map.groupBy(findings, ({ file }) => file);
      const open = desk.openFiles;
      for (const file of new Set([...byFile.keys(), ...open])) {
        const { uri, version } = pageOf(file);
        const params: PublishDiagnosticsParams = {
          uri,
          ...(client.hasVersions && version !== undefined && { version }),
          diagnostics: (byFile.get(file) ?? []).map((one) => diagnosticOf(one, telling)),
        };
        const key = JSON.stringify(params);
        now.set(uri, key);
        if (before.get(uri) !== key) await connection.sendDiagnostics(params);
      }
    }
    for (const uri of before.keys())
      if (!now.has(uri)) await connection.sendDiagnostics({ uri, diagnostics: [] });
    if (desk === undefined) this.#told.delete(folder);
    else this.#told.set(folder, now);
  }
}
