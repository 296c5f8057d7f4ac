import { mkdir, mkdtemp, readdir, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { publishCommand } from '../../src/command/publish.ts';
import { figureHref, figurePath } from '../../src/render/site-links.ts';
import { bookOf } from './linked-manual.ts';

const sheet = `---
procedure: look
title: Look
---

![Gap](<../figures/gap one.svg>)

1. Look at the lamp.

   :::figure{src="größe.svg" alt="Size"}
   :::
   :::figure{src="../figures/gap one.svg" alt="Gap"}
   :::
2. ![Lamp](lamp.svg) ![Lamp](../pictures/procedures/lamp.svg) ![Top](../lamp.svg)
   ![Far](https://example.org/far.svg)
`;
const shown = [
  'figures/gap one.svg',
  'lamp.svg',
  'pictures/procedures/lamp.svg',
  'procedures/größe.svg',
  'procedures/lamp.svg',
];

test('a book names each picture that its sheets show once, and no other', () => {
  const files = { 'manual.yaml': 'title: Small\n', 'procedures/look.md': sheet };
  const { figures } = bookOf(files);
  expect(figures.map(({ from }) => from)).toEqual(shown);
  expect(new Set(figures.map(({ to }) => to)).size).toBe(shown.length);
});

test('two pictures never share a place, and an address leads to the place', () => {
  const part = fc.constantFrom('figures', 'pictures', 'a', 'ö ü', 'a b', '50%', 'a#b?c');
  const path = fc.array(part, { minLength: 1, maxLength: 4 }).map((parts) => parts.join('/'));
  fc.assert(
    fc.property(path, path, (a, b) => {
      expect(figurePath(a) === figurePath(b)).toBe(a === b);
      const { pathname, hash, search } = new URL(figureHref(a), 'file:///site/');
      expect(decodeURIComponent(pathname)).toBe(`/site/${figurePath(a)}`);
      expect(hash + search).toBe('');
    }),
  );
});

test('publishing copies the pictures that are shown, each to where its sheet looks for it', async () => {
  const folder = await mkdtemp(join(tmpdir(), 'tallybolt-figures-'));
  const manual = join(folder, 'manual');
  const texts = { 'manual.yaml': 'title: Small\n', 'procedures/look.md': sheet };
  const pictures = [...shown, 'figures/unused.svg', 'notes.txt'].map((path) => [
    path,
    `<svg xmlns="http://www.w3.org/2000/svg"><title>${path}</title></svg>`,
  ]);
  for (const [path = '', text = ''] of [...Object.entries(texts), ...pictures]) {
    await mkdir(dirname(join(manual, path)), { recursive: true });
    await writeFile(join(manual, path), text);
  }
  await publishCommand(manual, { to: join(folder, 'site'), draft: true });
  const page = join(folder, 'site/procedures/look');
  const html = await readFile(join(page, 'index.html'), 'utf8');
  const titles = await Promise.all(
    [...html.matchAll(/<img src="([^"]*)"/g)].map(async ([, src = '']) => {
      const svg = await readFile(join(page, decodeURIComponent(src)), 'utf8');
      return /<title>(.*)<\/title>/.exec(svg)?.[1];
    }),
  );
  expect(titles.sort()).toEqual([...shown, 'figures/gap one.svg'].sort());
  const files = await readdir(join(folder, 'site'), { recursive: true });
  expect(files.filter((path) => /\.(svg|txt)$/.test(path))).toHaveLength(shown.length);
  await rm(folder, { recursive: true });
});
