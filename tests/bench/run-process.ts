import { spawn } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

export interface Ran {
  /** From its start to its end. */
  readonly seconds: number;
  /** The most memory that it held, all threads together. */
  readonly peakGB: number;
  readonly code: number | null;
  readonly out: string;
}

/** Runs a script in a Node of its own. Throws where it ends with another exit code than those allowed. */
export async function runProcess(
  script: string,
  words: readonly string[],
  allowed: readonly number[] = [0],
): Promise<Ran> {
  const folder = mkdtempSync(join(tmpdir(), 'tallybolt-bench-'));
  const peakFile = join(folder, 'peak');
  const preload = new URL('./tell-peak.ts', import.meta.url).href;
  const begun = performance.now();
  const child = spawn(process.execPath, ['--import', preload, script, ...words], {
    stdio: ['ignore', 'pipe', 'pipe'],
    env: { ...process.env, BENCH_PEAK: peakFile, ASTRO_TELEMETRY_DISABLED: '1' },
  });
  const out: Buffer[] = [];
  const errors: Buffer[] = [];
  child.stdout.on('data', (data: Buffer) => out.push(data));
  child.stderr.on('data', (data: Buffer) => errors.push(data));
  const code = await new Promise<number | null>((resolve, reject) => {
    child.on('error', reject);
    child.on('close', resolve);
  });
  const seconds = (performance.now() - begun) / 1000;
  if (code === null || !allowed.includes(code)) {
    rmSync(folder, { recursive: true });
    throw new Error(`${script} ${words.join(' ')} ended with ${code}: ${Buffer.concat(errors)}`);
  }
  const peakGB = Number(readFileSync(peakFile, 'utf8')) / 1024 ** 2;
  rmSync(folder, { recursive: true });
  return { seconds, peakGB, code, out: Buffer.concat(out).toString('utf8') };
}

/** The path of a file beside this one. */
export const besides = (name: string): string =>
  fileURLToPath(new URL(`./${name}`, import.meta.url));
