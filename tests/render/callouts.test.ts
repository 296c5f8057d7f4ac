import { expect, test } from 'vitest';
import { readManual } from '../../src/catalogue/index.ts';
import { linkManual } from '../../src/link/index.ts';
import { type Book, makeBook } from '../../src/render/index.ts';
import type { PictureFile } from '../../src/source/index.ts';
import { parseProcedure } from '../../src/syntax/index.ts';
import { bookOf, sheetIn } from './linked-manual.ts';

const machine = `machine: press
name: Press
fasteners:
  ram-bolt: { name: ram bolt, count: 4, figure: ../figures/ram bolt.svg }
parts:
  ram: { name: ram, when: brakes = overrun }
`;
const figure = `:::figure{src="../figures/ram.svg" alt='The "ram" <b>'}
::callout{item=ram-bolt at="25,50 75,50"}
::callout[gap]{at="50,0"}
::callout[the ram & its rod]{item=ram at="50,90"}

From the left.
:::`;
const sheet = (body: string): string =>
  `---\nprocedure: look\ntitle: Look\nmachine: press\n---\n\n${body}\n`;
const files = (body: string): Readonly<Record<string, string>> => ({
  'manual.yaml': 'title: Small\nvariants:\n  brakes: { values: [none, overrun] }\n',
  'machines/press.yaml': machine,
  'procedures/look.md': sheet(body),
});

/** A book of a manual whose pictures have sizes, as the edge would read them. */
function measured(body: string, pictures: readonly PictureFile[]): Book {
  const texts = Object.entries(files(body)).map(([path, text]) => ({ path, text }));
  const folder = { texts, unreadable: [], others: pictures.map(({ path }) => path), pictures };
  const manual = readManual(folder).value;
  const procedures = texts.flatMap((file) =>
    file.path.endsWith('.md') ? (parseProcedure(file).value ?? []) : [],
  );
  const { report } = bookOf({});
  return makeBook(linkManual(manual, procedures, folder).value, report, { draft: true });
}

const ram: PictureFile = {
  path: 'figures/ram.svg',
  state: 'fit',
  size: { width: 1280, height: 800 },
};
const steps =
  '1. :check[Look at the ram bolts for rust]{item=ram-bolt}.\n2. :check[Look at it]{item=ram}.';

test('a picture whose size is known is referred to, with its numbers around it', () => {
  const { bodyHtml } = sheetIn(measured(`${figure}\n\n${steps}`, [ram]), 'look');
  expect(bodyHtml).toContain('<image href="../../figures/ram.svg" width="640" height="400"');
  expect(bodyHtml).toContain('aria-label="The &#x22;ram&#x22; <b>"');
  expect(bodyHtml.match(/<line class="leader"/g)).toHaveLength(4);
  expect(bodyHtml).toContain('x2="160" y2="200"');
  expect(bodyHtml).toContain('x2="480" y2="200"');
  const links = [
    ...bodyHtml.matchAll(/<a class="number-link" href="([^"]*)" aria-label="([^"]*)"/g),
  ];
  expect(links.map(([, href, label]) => [href, label])).toEqual([
    ['../../machines/press/index.html#ram-bolt', '1, ram bolt'],
    ['#figure-1-2', '2, gap'],
    ['../../machines/press/index.html#ram', '3, the ram &#x26; its rod'],
  ]);
  expect(bodyHtml).not.toContain('style=');
});

test('the key says what each number is, how many there are and for which machines', () => {
  const { bodyHtml } = sheetIn(measured(`${figure}\n\n${steps}`, [ram]), 'look');
  const [, key = ''] = /<ol class="key">(.*?)<\/ol>/s.exec(bodyHtml) ?? [];
  const words = key.replace(/<\/li>/g, '\n').replace(/<[^>]*>/g, '');
  expect(words.trim().split('\n')).toEqual([
    '1 ram bolt (4)',
    '2 gap',
    '3 the ram &#x26; its rod (only for brakes = overrun)',
  ]);
  expect(bodyHtml).toContain('<figcaption><p>From the left.</p></figcaption>');
});

test('an action on an item that a figure shows has its number behind the name, else behind the words', () => {
  const { bodyHtml } = sheetIn(measured(`${figure}\n\n${steps}`, [ram]), 'look');
  const mark = (n: number): string =>
    `&nbsp;<a class="shown" href="#figure-1-${n}" aria-label="number ${n} in the figure"><span class="callout">${n}</span></a>`;
  const plain = bodyHtml.replaceAll('\u00a0', '&nbsp;').replaceAll('&#xA0;', '&nbsp;');
  expect(plain).toContain(`ram bolts</a>${mark(1)} for rust`);
  expect(plain).toContain(`Look at it${mark(3)}`);
  expect(bodyHtml).toContain('id="figure-1-1"');
});

test('two figures with call-outs are numbered, and a mention says which one it means', () => {
  const second =
    ':::figure{src="../figures/ram.svg" alt="Again"}\n::callout{item=ram at="1,1"}\n:::';
  const first =
    ':::figure{src="../figures/ram.svg" alt="Bolts"}\n::callout{item=ram-bolt at="1,1"}\n:::';
  const { bodyHtml } = sheetIn(measured(`${first}\n\n${second}\n\n${steps}`, [ram]), 'look');
  expect(bodyHtml).toContain('<p class="figure-number">Figure 2</p>');
  expect(bodyHtml).toContain('href="#figure-2-1" aria-label="number 1 in figure 2"');
});

test('without a size the picture has its key all the same', () => {
  const { bodyHtml } = sheetIn(measured(figure, []), 'look');
  expect(bodyHtml).not.toContain('<svg');
  expect(bodyHtml).toContain('<img src="../../figures/ram.svg"');
  expect(bodyHtml).toContain('<ol class="key">');
});

test('the picture of an entry is shown on the page of its machine, and taken along', () => {
  const book = measured(steps, []);
  const entries = book.machines.flatMap(({ groups }) => groups.flatMap((group) => group.entries));
  expect(entries.find(({ id }) => id === 'ram-bolt')?.picture).toEqual({
    src: '../../figures/ram%20bolt.svg',
    alt: 'ram bolt',
  });
  expect(entries.find(({ id }) => id === 'ram')?.picture).toBeUndefined();
  expect(book.figures.map(({ from }) => from)).toEqual(['figures/ram bolt.svg']);
});
