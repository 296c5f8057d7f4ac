import { accessSync, constants } from 'node:fs';
import { delimiter, join } from 'node:path';
import bundled from '@sparticuz/chromium';
import { type Browser, chromium } from 'playwright-core';

const names = ['chromium', 'chromium-browser', 'google-chrome', 'google-chrome-stable'];

/** A headless browser for tests: one installed on this machine, else the one that npm brought along. */
export async function launchBrowser(): Promise<Browser> {
  const installed = installedBrowser();
  return installed === undefined
    ? chromium.launch({ executablePath: await bundled.executablePath(), args: bundled.args })
    : chromium.launch({ executablePath: installed, args: ['--no-sandbox'] });
}

function installedBrowser(): string | undefined {
  const folders = (process.env.PATH ?? '').split(delimiter).filter((folder) => folder !== '');
  return folders.flatMap((folder) => names.map((name) => join(folder, name))).find(isExecutable);
}

function isExecutable(path: string): boolean {
  try {
    accessSync(path, constants.X_OK);
    return true;
  } catch {
    return false;
  }
}
