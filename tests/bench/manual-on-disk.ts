import { mkdirSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import type { TextFile } from '../../src/source/index.ts';

/** Writes the texts of a manual into a folder. */
export function writeTexts(folder: string, texts: readonly TextFile[]): void {
  for (const { path, text } of texts) {
    mkdirSync(dirname(join(folder, path)), { recursive: true });
    writeFileSync(join(folder, path), text);
  }
}
