import { existsSync } from 'node:fs';
import { mkdir, mkdtemp, readdir, readFile, rename, rm, stat, writeFile } from 'node:fs/promises';
import { hostname } from 'node:os';
import { basename, dirname, join } from 'node:path';
import { z } from 'zod';

/**
 * Makes a new folder beside a target, on the same disk, so that renaming from one to the other is one move. It says
 * who works in it: the next run takes away what a killed one left.
 */
export async function makeWorkshop(target: string): Promise<string> {
  await mkdir(dirname(target), { recursive: true });
  const workshop = await mkdtemp(join(dirname(target), prefixOf(target)));
  await writeFile(join(workshop, note), JSON.stringify(me));
  return workshop;
}

/** Where the folder goes whose place a new one takes; it is there only until that is done. */
export const replacedIn = (workshop: string): string => join(workshop, 'old');

/** Takes a workshop away. What was replaced is first given another name: half of it must never be brought back. */
export async function clearWorkshop(workshop: string): Promise<void> {
  const old = replacedIn(workshop);
  if (existsSync(old)) await rename(old, join(workshop, 'rubbish'));
  await rm(workshop, { recursive: true, force: true });
}

/**
 * Mends what killed runs left beside a target: brings back the folder that was there, where the run was killed
 * between moving it away and putting the new one in its place, and takes the workshops away.
 */
export async function mendAfterKilled(target: string): Promise<void> {
  const folder = dirname(target);
  const names = await readdir(folder).catch((): string[] => []);
  for (const name of names.filter((one) => one.startsWith(prefixOf(target))).sort()) {
    const workshop = join(folder, name);
    if (!(await isAbandoned(workshop))) continue;
    const old = replacedIn(workshop);
    if (existsSync(old) && !existsSync(target)) await rename(old, target);
    // What cannot be taken away is in nobody's way: its name has a dot in front.
    await clearWorkshop(workshop).catch(() => undefined);
  }
}

const note = 'owner.json';

const prefixOf = (target: string): string => `.${basename(target)}-in-the-making-`;

const ownerSchema = z.object({ host: z.string(), pid: z.int().positive(), since: z.number() });

const me: z.infer<typeof ownerSchema> = {
  host: hostname(),
  pid: process.pid,
  since: Math.floor(performance.timeOrigin),
};

const minute = 60_000;
const day = 24 * 60 * minute;

/** A run on another machine, or in another container, is taken for killed after a day. */
async function isAbandoned(workshop: string): Promise<boolean> {
  const found = await stat(workshop).catch(() => undefined);
  if (found === undefined || !found.isDirectory()) return false;
  const age = Date.now() - found.mtimeMs;
  const owner = await ownerOf(workshop);
  if (owner === undefined) return age > 10 * minute;
  if (age > day) return true;
  if (owner.host !== me.host) return false;
  return owner.pid === me.pid ? owner.since !== me.since : !isRunning(owner.pid);
}

async function ownerOf(workshop: string): Promise<z.infer<typeof ownerSchema> | undefined> {
  try {
    const told: unknown = JSON.parse(await readFile(join(workshop, note), 'utf8'));
    return ownerSchema.safeParse(told).data;
  } catch {
    return undefined;
  }
}

function isRunning(pid: number): boolean {
  try {
    process.kill(pid, 0);
    return true;
  } catch (error) {
    // It runs, and belongs to somebody else.
    return error instanceof Error && 'code' in error && error.code === 'EPERM';
  }
}
