import { describe, expect, test } from 'vitest';
import { parseProcedure } from '../../src/syntax/index.ts';
import { dataOf, frontMatter, read } from './carets.ts';

describe('sections', () => {
  test('begin at headings of any depth', () => {
    const { procedure, text } = read(`Before.

# 2. Removal of the *anvil*

Text.

### Démontage
Setext
------
1. a`);
    const sections = procedure.sections.map(({ id, title, depth, blocks }) => [
      id,
      title,
      depth,
      blocks.length,
    ]);
    expect(sections).toEqual([
      ['start', undefined, 0, 1],
      ['removal-of-the-anvil', '2. Removal of the anvil', 1, 1],
      ['demontage', 'Démontage', 3, 0],
      ['setext', 'Setext', 2, 1],
    ]);
    const { start, end } = procedure.sections[1]?.place ?? procedure.place;
    expect(text.slice(start.offset, end.offset)).toBe('# 2. Removal of the *anvil*\n\nText.');
  });

  test('leave out an empty start', () => {
    expect(
      read('<!-- note -->\n\n[a]: b.md\n\n## Removal').procedure.sections.map(({ id }) => id),
    ).toEqual(['removal']);
    expect(read('').procedure.sections).toEqual([]);
  });

  test('with the same heading are told and have ids of their own', () => {
    const result = read(`Text.

## Removal

## removal!
^^^^^^^^^^^ section-twice

## Removal 2

## Removal
^^^^^^^^^^ section-twice

## Start

## 取り外し`);
    expect(result.procedure.sections.map(({ id }) => id)).toEqual([
      'start',
      'removal',
      'removal-2',
      'removal-2-2',
      'removal-3',
      'start-2',
      'section',
    ]);
    expect(dataOf(result)).toMatchObject({ id: 'removal', first: { start: { line: 8 } } });
  });
});

describe('links and pictures', () => {
  test('are listed with their places, references resolved', () => {
    const { procedure, text } =
      read(`See [the other page](other.md#part "T"), ![the pin](pin.svg) and ![](none.svg).

- [ref][A b] and [A b] and ![pic][p]

## [In a heading](h.md)

[a  B]: ref.md
[a b]: second.md
[p]: p.svg`);
    const links = procedure.links.map(({ url, isImage, alt, place }) => [
      url,
      isImage,
      alt,
      text.slice(place.start.offset, place.end.offset),
    ]);
    expect(links).toEqual([
      ['other.md#part', false, undefined, '[the other page](other.md#part "T")'],
      ['pin.svg', true, 'the pin', '![the pin](pin.svg)'],
      ['none.svg', true, '', '![](none.svg)'],
      ['ref.md', false, undefined, '[ref][A b]'],
      ['ref.md', false, undefined, '[A b]'],
      ['p.svg', true, 'pic', '![pic][p]'],
      ['h.md', false, undefined, '[In a heading](h.md)'],
    ]);
    expect(JSON.stringify(procedure.sections)).not.toMatch(/Reference|"definition"/);
  });
});

describe('the front matter', () => {
  const parse = (text: string) => parseProcedure({ path: 'procedures/a.md', text });

  test('gives id, condition and places', () => {
    const text = `---
procedure: a
title: A
when: "feed = hydraulic"
starts: { coolant: drained }
---
Text.`;
    const { value, facts } = parse(text);
    expect(facts).toEqual([]);
    expect(value).toMatchObject({
      id: 'a',
      file: 'procedures/a.md',
      when: { written: 'feed = hydraulic' },
    });
    const slice = (place = value?.place) => text.slice(place?.start.offset, place?.end.offset);
    expect(slice(value?.when?.place)).toBe('feed = hydraulic');
    expect(slice(value?.placeOf('starts.coolant'))).toBe('drained');
    expect(slice()).toBe(text);
  });

  test('that is missing is told, and the rest is read all the same', () => {
    const { value, facts } = parse('# Title\n\n:remove it');
    expect(value).toBeUndefined();
    expect(facts.map(({ kind }) => kind)).toEqual(['front-matter-missing', 'attribute-wrong']);
    expect(facts[0]?.place.end.offset).toBe('# Title'.length);
    expect(parse('').facts.map(({ kind }) => kind)).toEqual(['front-matter-missing']);
  });

  test('with a fault in one entry leaves the procedure', () => {
    const { value, facts } = parse(
      '---\nprocedure: a\ntitle: A\npeople: two\nwhen: "feed ="\n---\n',
    );
    expect(facts.map(({ kind }) => kind)).toEqual(['yaml-shape', 'condition-wrong']);
    expect(value).toMatchObject({ id: 'a', when: undefined });
  });

  test('without an id leaves no procedure', () => {
    const { value, facts } = parse('---\ntitle: A\n---\n');
    expect(value).toBeUndefined();
    expect(facts.map(({ kind }) => kind)).toEqual(['yaml-shape']);
  });

  test('may follow a byte order mark', () => {
    const text = `\uFEFF${frontMatter}:remove{item=a} [b](c.md)`;
    const { value, facts } = parse(text);
    expect(facts).toEqual([]);
    const [block] = value?.sections[0]?.blocks ?? [];
    const { start, end } = (block?.type === 'prose' && block.actions[0]?.item.place) || {
      start: { offset: 0 },
      end: { offset: 0 },
    };
    expect(text.slice(start.offset, end.offset)).toBe('a');
    expect(value?.links[0]?.place.end.offset).toBe(text.length);
  });
});
