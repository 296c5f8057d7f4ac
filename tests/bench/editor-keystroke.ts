import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { CompletionRequest, HoverRequest } from 'vscode-languageserver/node';
import type { ManualFiles } from '../../src/source/index.ts';
import { EditorClient } from '../editor/editor-client.ts';
import { generate } from './generate.ts';
import { median } from './median.ts';

/** Milliseconds that an editor waits. */
export interface EditorTimes {
  /** From the first file opened to its findings: the whole manual is read and checked. */
  readonly first: number;
  /** From a keystroke in a procedure to its findings, each. */
  readonly keystrokes: readonly number[];
  /** From a keystroke to the items that may stand there, each. */
  readonly completions: readonly number[];
  readonly hovers: readonly number[];
}

/** Writes a manual to a folder and works on one procedure of it through the language server. */
export async function editorTimes(files: ManualFiles, strokes = 20): Promise<EditorTimes> {
  const folder = mkdtempSync(join(tmpdir(), 'tallybolt-bench-'));
  for (const { path, text } of files.texts) {
    mkdirSync(dirname(join(folder, path)), { recursive: true });
    writeFileSync(join(folder, path), text);
  }
  const procedures = files.texts.filter(({ path }) => path.endsWith('.md'));
  const own = procedures[Math.floor(procedures.length / 2)];
  if (own === undefined) throw new Error('the manual has no procedure');
  const client = new EditorClient();
  try {
    await client.start();
    const timed = async (work: () => Promise<unknown>): Promise<number> => {
      const begun = performance.now();
      await work();
      return performance.now() - begun;
    };
    const uri = await client.open(join(folder, own.path));
    const first = await timed(() => client.until(uri, () => true, 600_000));
    const at = client.text(uri).lastIndexOf('{item=') + '{item='.length;
    const type = (text: string, length: number) => client.type(uri, at, at + length, text);
    const keystrokes: number[] = [];
    const completions: number[] = [];
    const hovers: number[] = [];
    for (let i = 0; i < strokes; i += 1) {
      // A letter too many, and out again: each of them is a keystroke.
      for (const [text, length] of [
        ['x', 0],
        ['', 1],
      ] as const) {
        keystrokes.push(
          await timed(async () => {
            const version = await type(text, length);
            await client.until(uri, (_, params) => params.version === version);
          }),
        );
      }
      const position = client.document(uri).positionAt(at);
      const textDocument = { uri };
      completions.push(
        await timed(async () => {
          await type('x', 0);
          await client.connection.sendRequest(CompletionRequest.type, { textDocument, position });
        }),
      );
      await type('', 1);
      hovers.push(
        await timed(() =>
          client.connection.sendRequest(HoverRequest.type, { textDocument, position }),
        ),
      );
    }
    await client.stop();
    return { first, keystrokes, completions, hovers };
  } finally {
    client.kill();
    rmSync(folder, { recursive: true, force: true });
  }
}

if (import.meta.main) {
  const machines = Number(process.argv[2] ?? 20);
  const { files } = generate(1, { machines, jobs: 46, slips: 0 });
  const times = await editorTimes(files);
  const row = (name: string, all: readonly number[]) =>
    console.log(
      `${name.padEnd(28)} median ${median(all).toFixed(0)} ms, longest ${Math.max(...all).toFixed(0)} ms`,
    );
  console.log(`${files.texts.length} files; first findings after ${times.first.toFixed(0)} ms`);
  row('keystroke to findings', times.keystrokes);
  row('keystroke to completion', times.completions);
  row('hover', times.hovers);
}
