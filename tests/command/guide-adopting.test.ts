import { readFileSync } from 'node:fs';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { type Folder, makeFolder } from './run.ts';
import { makeShell, type Shell } from './shim.ts';

const chapter = readFileSync(
  new URL('../../site/guide/12-starting-and-adopting.md', import.meta.url),
  'utf8',
);

type Deed =
  | { readonly file: string; readonly text: string }
  | { readonly line: string; readonly prints: string };

/** What the chapter does, in its order: files as they are shown, and lines with what they print. */
const deeds: readonly Deed[] = [
  ...chapter.matchAll(/(?:^`([^`]+)`:\n\n)?^```(yaml|markdown|console)\n([\s\S]*?)^```$/gm),
].flatMap(([, file = '', , text = '']): Deed[] =>
  file === ''
    ? [...text.matchAll(/^\$ (.+)\n((?:(?!\$ ).*\n)*)/gm)].map(([, line = '', prints = '']) => ({
        line,
        prints,
      }))
    : [{ file, text }],
);

let folder: Folder;
let shell: Shell;
beforeAll(async () => {
  folder = await makeFolder();
  shell = await makeShell();
});
afterAll(async () => {
  await folder.remove();
  await shell.remove();
});

test('the stages of the chapter happen as they are told', async () => {
  const lines = deeds.filter((deed) => 'line' in deed);
  expect(lines.length).toBeGreaterThan(9);
  expect(deeds.length - lines.length).toBeGreaterThan(5);
  for (const deed of deeds) {
    if ('file' in deed) await folder.write({ [deed.file]: deed.text });
    else {
      const { code, out, err } = await shell.run(deed.line, folder.path);
      expect({ line: deed.line, err, code }).toMatchObject({
        err: '',
        code: expect.toSatisfy((one) => one < 2),
      });
      expect(`$ ${deed.line}\n${out}`).toMatch(printed(`$ ${deed.line}\n${deed.prints}`));
    }
  }
}, 120_000);

/** `…` on a line by itself stands for lines that are left out. */
function printed(text: string): RegExp {
  const parts = text.split(/^…\n/m).map((part) => part.replaceAll(/[.*+?^${}()|[\]\\]/g, '\\$&'));
  return new RegExp(`^${parts.join('(?:.*\\n)*')}$`);
}
