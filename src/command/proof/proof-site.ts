import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { livePages } from '../../astro/index.ts';
import { packageFile } from '../package-root.ts';
import type { Editor } from './editor.ts';
import { ProofAssets } from './proof-assets.ts';
import type { Desk } from './proof-desk.ts';
import { ProofPages } from './proof-page.ts';
import { ProofServer } from './proof-server.ts';

/** The pages of a proof at an address of this machine. */
export interface ProofSite {
  readonly port: number;
  /** Shows another state from now on, and tells the open pages. */
  show(desk: Desk): void;
  close(): Promise<void>;
}

export interface SiteOptions {
  readonly folder: string;
  /** The port that is tried first. */
  readonly port: number;
  readonly editor: Editor | undefined;
}

/** Opens the pages of a manual. Throws CannotRun where no port is free; then nothing of it stays behind. */
export async function openProofSite(
  desk: Desk,
  { folder, port, editor }: SiteOptions,
): Promise<ProofSite> {
  const site = packageFile('site');
  const workDir = await mkdtemp(join(tmpdir(), 'tallybolt-proof-'));
  const endings = [() => rm(workDir, { recursive: true, force: true })];
  const end = async (): Promise<void> => {
    for (const one of endings.toReversed()) await one();
  };
  try {
    const live = await livePages(site, workDir);
    endings.push(() => live.close());
    const pages = new ProofPages(live, site);
    const server = new ProofServer({ folder, pages, assets: new ProofAssets(site), editor }, desk);
    const { port: found, close } = await server.listen(port);
    endings.push(close);
    return { port: found, show: (next) => server.show(next), close: end };
  } catch (error) {
    await end();
    throw error;
  }
}
