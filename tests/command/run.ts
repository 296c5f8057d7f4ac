import { spawn } from 'node:child_process';
import { cp, mkdir, mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

const main = fileURLToPath(new URL('../../src/command/main.ts', import.meta.url));

export interface Ran {
  readonly code: number | null;
  readonly out: string;
  readonly err: string;
}

/** Runs the command as its users do: in a process of its own, its output in pipes. */
export function run(words: readonly string[], cwd = tmpdir(), env = {}): Promise<Ran> {
  return new Promise((done, fail) => {
    const child = spawn(process.execPath, [main, ...words], {
      cwd,
      env: { ...process.env, ...env },
      stdio: ['ignore', 'pipe', 'pipe'],
    });
    const out: Buffer[] = [];
    const err: Buffer[] = [];
    child.stdout.on('data', (part: Buffer) => out.push(part));
    child.stderr.on('data', (part: Buffer) => err.push(part));
    child.on('error', fail);
    child.on('close', (code) =>
      done({ code, out: Buffer.concat(out).toString(), err: Buffer.concat(err).toString() }),
    );
  });
}

/** A folder that is removed after the test, with files by path. */
export interface Folder {
  readonly path: string;
  write(files: Readonly<Record<string, string | Uint8Array>>): Promise<void>;
  copy(from: string): Promise<void>;
  remove(): Promise<void>;
}

export async function makeFolder(name = 'tallybolt-command-'): Promise<Folder> {
  const path = await mkdtemp(join(tmpdir(), name));
  return {
    path,
    write: async (files) => {
      for (const [file, text] of Object.entries(files)) {
        await mkdir(dirname(join(path, file)), { recursive: true });
        await writeFile(join(path, file), text);
      }
    },
    copy: (from) => cp(from, path, { recursive: true }),
    remove: () => rm(path, { recursive: true, force: true }),
  };
}

/** A sound manual of one page. */
export const soundManual = {
  'manual.yaml': 'title: Door manual\n',
  'procedures/oil-hinge.md': `---
procedure: oil-hinge
title: Oil the hinge
items:
  parts:
    hinge-pin: { name: hinge pin }
  fasteners:
    plate-screw: { name: plate screw, count: 4, thread: M6, torque: 9 N·m }
---

1. :loosen[Loosen the plate screws]{item=plate-screw}.
2. :remove[Push the pin out]{item=hinge-pin}.
3. :install[Push the pin in]{item=hinge-pin}.
4. :torque{item=plate-screw}
`,
} as const;

/** The same, with a pin that stays out and screws that stay loose. */
export const brokenManual = {
  ...soundManual,
  'procedures/oil-hinge.md': soundManual['procedures/oil-hinge.md']
    .replace('3. :install[Push the pin in]{item=hinge-pin}.\n', '')
    .replace('4. :torque{item=plate-screw}\n', ''),
} as const;
