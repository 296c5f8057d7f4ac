import { spawn } from 'node:child_process';
import { existsSync } from 'node:fs';
import { readdir } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import { setTimeout } from 'node:timers/promises';
import { fileURLToPath } from 'node:url';
import { type Folder, run, soundManual } from '../command/run.ts';
import { printOfFolder } from './print-of-folder.ts';

const main = fileURLToPath(new URL('../../src/command/main.ts', import.meta.url));

/** What was found after runs of `publish` that were killed at random moments. */
export interface Killed {
  readonly kills: number;
  /** Runs that had ended before the kill. */
  readonly ended: number;
  readonly old: number;
  readonly fresh: number;
  /** Neither the old site nor the new, with what is there instead. */
  readonly broken: readonly string[];
  /** What the killed runs left beside the site, and what of it the next run left. */
  readonly leftovers: number;
  readonly leftoversAtTheEnd: readonly string[];
}

/**
 * Publishes two editions of a manual in turn and kills each run after a random part of its time; half of the kills
 * fall into the last sixth, in which the site is put in place.
 */
export async function killPublishing(
  folder: Folder,
  kills: number,
  random: () => number,
): Promise<Killed> {
  const site = join(folder.path, 'site');
  const prints: string[] = [];
  let milliseconds = 0;
  for (const edition of [0, 1]) {
    await write(folder, edition);
    const begun = performance.now();
    const { code, err } = await run(['publish', 'manual', '--to', 'site'], folder.path);
    if (code !== 0) throw new Error(`the manual is not published: ${err}`);
    milliseconds = performance.now() - begun;
    prints.push(await printOfFolder(site));
  }
  let [ended, old, fresh, leftovers, last] = [0, 0, 0, 0, 1];
  const broken: string[] = [];
  for (let i = 0; i < kills; i += 1) {
    const edition = 1 - last;
    await write(folder, edition);
    const part = i % 2 === 0 ? random() : 5 / 6 + random() / 4;
    if (await endedBefore(folder.path, part * milliseconds)) ended += 1;
    const print = existsSync(site) ? await printOfFolder(site) : 'no site';
    if (print === prints[edition]) [fresh, last] = [fresh + 1, edition];
    else if (print === prints[last]) old += 1;
    else broken.push(print);
    leftovers += (await beside(site)).length;
  }
  await run(['publish', 'manual', '--to', 'site'], folder.path);
  return { kills, ended, old, fresh, broken, leftovers, leftoversAtTheEnd: await beside(site) };
}

/** Folders in the making that stand beside a site. */
export const beside = async (site: string): Promise<readonly string[]> =>
  (await readdir(dirname(site))).filter((name) => name.includes('-in-the-making-'));

async function write(folder: Folder, edition: number): Promise<void> {
  const text = soundManual['procedures/oil-hinge.md'];
  await folder.write({
    'manual/manual.yaml': `title: Door manual, edition ${edition}\n`,
    'manual/procedures/oil-hinge.md': text.replace('Push the pin out', `Push pin ${edition} out`),
  });
}

/** Runs `publish` and kills it after a time; whether it was through by then. */
async function endedBefore(cwd: string, milliseconds: number): Promise<boolean> {
  const child = spawn(process.execPath, [main, 'publish', 'manual', '--to', 'site'], {
    cwd,
    stdio: 'ignore',
  });
  const closed = new Promise<boolean>((resolve) => {
    child.on('close', (code) => resolve(code !== null));
  });
  await Promise.race([closed, setTimeout(milliseconds)]);
  child.kill('SIGKILL');
  return await closed;
}
