import { mkdir, mkdtemp, open, readdir, readFile, rm, truncate, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { judgePicture } from '../../src/command/judge-picture.ts';
import { publishCommand } from '../../src/command/publish.ts';
import { readManualFiles } from '../../src/command/read-manual-files.ts';

const svg = (inner: string, root = 'viewBox="0 0 640 400"', before = ''): string =>
  `${before}<svg xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink" ${root}>${inner}</svg>`;
const judged = (text: string, path = 'a.svg') => judgePicture(path, new TextEncoder().encode(text));

describe('an SVG', () => {
  test.each([
    ['viewBox="0 0 640 400"', { width: 640, height: 400 }],
    ['viewBox="-10,20 32.5 8" width="1in"', { width: 32.5, height: 8 }],
    // CSS Values and Units 4, absolute lengths: 1in = 2.54cm = 96px.
    ['width="25.4mm" height="2.54cm"', { width: 96, height: 96 }],
    ['width="100%" height="100%"', undefined],
    ['', undefined],
  ])('with %s has a size where it says one', (root, size) => {
    const found = judged(svg('<path d="M0 0"/>', root));
    expect(found).toMatchObject({ state: 'fit' });
    if (found.state !== 'fit') return;
    if (size === undefined) expect(found.size).toBeUndefined();
    else {
      expect(found.size?.width).toBeCloseTo(size.width, 9);
      expect(found.size?.height).toBeCloseTo(size.height, 9);
    }
  });

  test.each([
    ['<script>alert(1)</script>', 'a script'],
    ['<g xmlns:x="http://www.w3.org/2000/svg"><x:script/></g>', 'a script'],
    ['<rect onclick="alert(1)"/>', 'a script (`onclick`)'],
    ['<a href="javascript:alert(1)"><path d=""/></a>', 'a script in a link'],
    ['<set attributeName="onload" to="alert(1)"/>', 'an animation of `onload`'],
    ['<foreignObject><p/></foreignObject>', 'a piece of a web page (`foreignObject`)'],
    [
      '<image href="https://example.org/a.png"/>',
      'a part that lies elsewhere (`https://example.org/a.png`)',
    ],
    ['<use xlink:href="other.svg#a"/>', 'a part that lies elsewhere (`other.svg#a`)'],
    ['<rect fill="url(other.svg#a)"/>', 'a part that lies elsewhere (`url(other.svg#a)`)'],
    [
      '<style>@import "https://example.org/a.css";</style>',
      'a style that loads something from elsewhere',
    ],
    [
      '<style><![CDATA[path{fill:url("x.svg#a")}]]></style>',
      'a style that loads something from elsewhere',
    ],
  ])('with %s is refused', (inner, what) => {
    expect(judged(svg(inner))).toEqual({ path: 'a.svg', state: 'unsafe', what });
  });

  test('with a style sheet or entities beside its root is refused', () => {
    expect(judged(svg('', '', '<?xml-stylesheet href="a.css"?>'))).toMatchObject({
      what: 'a style sheet from elsewhere',
    });
    expect(judged(svg('&a;', '', '<!DOCTYPE svg [<!ENTITY a "b">]>'))).toMatchObject({
      what: 'entities of its own',
    });
  });

  test.each([
    '<defs><linearGradient id="g"/></defs><rect fill="url(#g)" style="stroke:url( \'#g\' )"/>',
    '<use xlink:href="#a"/><image href="data:image/png;base64,AAAA"/>',
    '<a href="https://example.org/"><text>on the web</text></a>',
    '<!-- <script> --><text>script, url(x), @import</text>',
    '<metadata xmlns:rdf="http://www.w3.org/1999/02/22-rdf-syntax-ns#"><rdf:a rdf:resource="http://example.org/"/></metadata>',
  ])('with %s is a picture', (inner) => {
    expect(judged(svg(inner))).toMatchObject({ state: 'fit' });
  });

  test.each([
    ['<svg><path></svg>', /^missing end tag for element path, in line 1$/],
    ['no picture', /, in line 1$/],
    ['<html/>', /^its content is no svg$/],
    ['', /^it is empty$/],
    [svg('<text>&nbsp;</text>'), /^SVG knows no &nbsp;$/],
    [`${'<g>'.repeat(200_000)}`, /./],
  ])('%#: what no browser shows is broken', (text, reason) => {
    const found = judged(text);
    expect(found.state).toBe('broken');
    if (found.state === 'broken') expect(found.reason).toMatch(reason);
  });

  test('may be UTF-16, or of the encoding that it names', () => {
    const utf16 = Buffer.from(`\ufeff${svg('')}`, 'utf16le');
    expect(judgePicture('a.svg', utf16)).toMatchObject({ state: 'fit' });
    const latin = Buffer.from(
      svg('<text>M\u00fcll</text>', '', '<?xml version="1.0" encoding="iso-8859-1"?>'),
      'latin1',
    );
    expect(judgePicture('a.svg', latin)).toMatchObject({ state: 'fit' });
    expect(judgePicture('a.svg', Uint8Array.of(60, 255, 62))).toMatchObject({ state: 'broken' });
  });
});

describe('a picture of pixels', () => {
  // PNG specification (ISO/IEC 15948), 5.2 and 11.2.2: signature, then IHDR with width and height.
  const png = (width: number, height: number): Uint8Array => {
    const bytes = Buffer.alloc(33);
    bytes.set([
      0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a, 0, 0, 0, 13, 0x49, 0x48, 0x44, 0x52,
    ]);
    bytes.writeUInt32BE(width, 16);
    bytes.writeUInt32BE(height, 20);
    return bytes;
  };

  test('has its size, whatever its ending', () => {
    const size = { width: 1280, height: 720 };
    expect(judgePicture('a.png', png(1280, 720))).toEqual({ path: 'a.png', state: 'fit', size });
    expect(judgePicture('a.JPG', png(1280, 720))).toMatchObject({ state: 'fit', size });
  });

  test('without width, of another kind or of no kind is broken', () => {
    expect(judgePicture('a.png', png(0, 9))).toMatchObject({ reason: 'it has no width or height' });
    // GIF89a, section 18: the signature, then width and height.
    const gif = Buffer.from('GIF89a\u0001\u0000\u0001\u0000\u0000\u0000\u0000', 'latin1');
    expect(judgePicture('a.png', gif)).toMatchObject({ reason: 'its content is of the type gif' });
    expect(judged('a text', 'a.png')).toMatchObject({
      reason: 'its content is no png, jpg or webp',
    });
    expect(judged(svg(''), 'a.png')).toMatchObject({ reason: 'its content is of the type svg' });
  });
});

describe('a manual with pictures that cannot be shown', () => {
  let folder: string;
  const write = async (path: string, text: string): Promise<void> => {
    await mkdir(dirname(join(folder, path)), { recursive: true });
    await writeFile(join(folder, path), text);
  };
  beforeAll(async () => {
    folder = await mkdtemp(join(tmpdir(), 'tallybolt-pictures-'));
    const shown = ['good', 'script', 'huge', 'broken', 'gone'].map(
      (name) => `   ![${name}](../figures/${name}.svg)`,
    );
    await write('manual/manual.yaml', 'title: Small\n');
    await write(
      'manual/procedures/look.md',
      `---\nprocedure: look\ntitle: Look\n---\n\n1. Look.\n\n${shown.join('\n')}\n`,
    );
    await write('manual/figures/good.svg', svg('<path d="M0 0"/>'));
    await write('manual/figures/script.svg', svg('<script>document.title = "taken"</script>'));
    await write('manual/figures/broken.svg', '<svg');
    await (await open(join(folder, 'manual/figures/huge.svg'), 'w')).close();
    await truncate(join(folder, 'manual/figures/huge.svg'), 20 * 1024 * 1024);
  });
  afterAll(() => rm(folder, { recursive: true }));

  test('is read without taking in what is too large', async () => {
    const { pictures } = await readManualFiles(join(folder, 'manual'));
    expect(pictures?.map(({ path, state }) => `${path} ${state}`)).toEqual([
      'figures/broken.svg broken',
      'figures/good.svg fit',
      'figures/huge.svg large',
      'figures/script.svg unsafe',
    ]);
    expect(pictures?.find(({ state }) => state === 'large')).toMatchObject({ bytes: 20_971_520 });
  });

  test('is published as a draft only, and without them', async () => {
    const said: string[] = [];
    const errors = process.stderr.write;
    process.stderr.write = (text: string | Uint8Array) => said.push(String(text)) > 0;
    try {
      await publishCommand(join(folder, 'manual'), { to: join(folder, 'site'), draft: true });
    } finally {
      process.stderr.write = errors;
    }
    for (const words of [
      'The picture `figures/script.svg` has a script in it',
      'The picture `figures/huge.svg` has 20 MB; a figure may have 5 MB',
      'The picture `figures/broken.svg` cannot be shown',
      'There is no figure `figures/gone.svg`',
    ])
      expect(said.join('')).toContain(words);
    expect(await readdir(join(folder, 'site/figures'))).toEqual(['good.svg']);
    const html = await readFile(join(folder, 'site/procedures/look/index.html'), 'utf8');
    expect(html).not.toContain('taken');
  });
});
