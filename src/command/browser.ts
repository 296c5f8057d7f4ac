import { accessSync, constants } from 'node:fs';
import { delimiter, join } from 'node:path';
import type { Browser, LaunchOptions } from 'playwright-core';
import { CannotRun } from './cannot-run.ts';

const names = ['chromium', 'chromium-browser', 'google-chrome', 'google-chrome-stable'];

/**
 * A headless browser: one that is installed on this machine, else the one that npm brought along. Throws
 * CannotRun where there is neither.
 */
export async function launchBrowser(): Promise<Browser> {
  const { chromium } = await import('playwright-core');
  const faults: string[] = [];
  for (const options of waysToLaunch()) {
    try {
      return await chromium.launch(await options());
    } catch (error) {
      faults.push(error instanceof Error ? (error.message.split('\n')[0] ?? '') : String(error));
    }
  }
  throw new CannotRun(
    `No browser to print with could be started: ${faults.at(-1) ?? 'none was found'}`,
    'Install Chromium or Chrome, or run `npm install @sparticuz/chromium` beside tallybolt.',
  );
}

function waysToLaunch(): readonly (() => Promise<LaunchOptions>)[] {
  const args = process.getuid?.() === 0 ? ['--no-sandbox'] : [];
  const installed = installedBrowsers().map((executablePath) => async () => ({
    executablePath,
    args,
  }));
  const channels = process.platform === 'linux' ? [] : ['chrome', 'msedge'];
  return [
    ...installed,
    ...channels.map((channel) => async () => ({ channel, args })),
    async () => {
      const { default: bundled } = await import('@sparticuz/chromium');
      return { executablePath: await bundled.executablePath(), args: bundled.args };
    },
  ];
}

function installedBrowsers(): readonly string[] {
  const folders = (process.env.PATH ?? '').split(delimiter).filter((folder) => folder !== '');
  return folders.flatMap((folder) => names.map((name) => join(folder, name))).filter(isExecutable);
}

function isExecutable(path: string): boolean {
  try {
    accessSync(path, constants.X_OK);
    return true;
  } catch {
    return false;
  }
}
