import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { elementsOf } from './html-tree.ts';
import { bookOf, sheetIn } from './linked-manual.ts';

const attack = `"'><script>alert(1)</script><img src=x onerror=alert(1)>`;
const quoted = JSON.stringify(attack);
const inAttribute = attack.replaceAll('"', '&quot;');

/** Elements and attributes that a sheet is made of; whatever else turns up came from the writer's text. */
const elements =
  'a aside blockquote br code del div em figcaption figure h2 h3 hr img input label li ol p path pre section span strong sub sup svg table tbody td th thead tr ul wbr'.split(
    ' ',
  );
const attributes =
  'align alt aria-hidden aria-label aria-labelledby autocomplete class d data-count data-guards data-item data-join data-lines data-listed data-number data-step data-unless data-verb data-when height href id loading role scope src start title type viewBox width'.split(
    ' ',
  );

function expectHarmless(html: string): void {
  for (const { name, attributes: own } of elementsOf(html)) {
    expect(elements).toContain(name);
    for (const attribute of Object.keys(own)) expect(attributes).toContain(attribute);
    for (const url of [own.href, own.src]) {
      if (url !== undefined) expect(url).toMatch(/^(https?:|mailto:|tel:|#|\.\.\/\.\.\/)/i);
    }
  }
}

function bodyOf(text: string): string {
  const page = `---\nprocedure: p\ntitle: P\n---\n\n${text}\n`;
  return sheetIn(bookOf({ 'manual.yaml': 'title: T\n', 'p.md': page }), 'p').bodyHtml;
}

const hostile = {
  'manual.yaml': `title: ${quoted}\nsafety: ${quoted}\nvariants: { drive: { name: ${quoted}, values: [electric, petrol] } }\n`,
  'machines/m.yaml': `machine: m
name: ${quoted}
fasteners:
  bolt: { name: ${quoted}, plural: ${quoted}, thread: ${quoted}, class: ${quoted}, torque: 20 N·m, stack: [${quoted}], note: ${quoted} }
parts:
  pad: { name: ${quoted}, single-use: true, part-number: ${quoted}, mass: 2 kg }
circuits:
  oil: { name: ${quoted}, fluid: ${quoted}, capacity: 2 L, mix: { ${quoted}: 50 % }, dispose: ${quoted}, bleed: ${quoted} }
tools: { wrench: { name: ${quoted}, size: ${quoted} } }
consumables: { grease: { name: ${quoted}, specification: ${quoted} } }
hazards: { heat: { signal: danger, hazard: ${quoted}, harm: ${quoted}, avoid: ${quoted} } }
`,
  'p.md': `---
procedure: p
title: ${quoted}
summary: ${quoted}
tools: [wrench]
leaves: { pad: gone }
---

${attack}

# Heading ${attack}

::hazard{of=heat}

1. :remove[${attack}]{item=pad} and :torque{item=bolt} and :drain{item=oil} ${attack}
   ::step{tools=wrench consumables=grease}
2. :::torque{item=bolt}
   ${attack}
   :::
3. :::warning{hazard="${inAttribute}" harm="${inAttribute}"}
   ${attack}
   :::
4. :measure{item=pad value="${inAttribute}"} :fill{item=oil amount="${inAttribute}"}
5. :::figure{src="../${inAttribute}.svg" alt="${inAttribute}"}
   ${attack}
   :::
6. :::if[${attack}]
   ${attack}
   :::
7. :apply{item=pad with=grease when="drive = petrol"} ::perform{procedure=q}
8. ::perform{procedure=p}

| ${attack} | b |
|---|:-:|
| ${attack} | c |

\`${attack}\` ~~~${attack}~~~ [^1]

[^1]: ${attack}

    ${attack}
`,
};

describe('hostile text', () => {
  const book = bookOf(hostile);
  const [sheet] = book.sheets;

  test('in every field gives text, no element', () => {
    if (sheet === undefined) throw new Error('no sheet');
    expectHarmless(sheet.bodyHtml);
    expectHarmless(book.safetyHtml);
    for (const { avoidHtml } of sheet.hazards) expectHarmless(avoidHtml);
    expect(sheet.bodyHtml).toContain('&#x3C;script>');
    expect(sheet.hazards.length).toBeGreaterThan(1);
    expect(sheet.bodyHtml.match(/class="box /g)?.length).toBeGreaterThan(5);
  });

  test.each([
    'javascript:alert(1)',
    'JaVaScRiPt:alert(1)',
    ' javascript:alert(1)',
    'java\\\nscript:alert(1)',
    '&#x6A;avascript:alert(1)',
    'javascript&colon;alert(1)',
    'java&Tab;script:alert(1)',
    'java&NewLine;script:alert(1)',
    '&#1;javascript:alert(1)',
    'vbscript:x',
    'data:text/html,<script>alert(1)</script>',
    'file:///etc/passwd',
    '//elsewhere.example/x',
    '\\\\elsewhere.example/x',
    '/absolute',
    '../../outside.md',
    'blob:x',
  ])('the address %s makes no link and no picture', (url) => {
    for (const text of [`[x](<${url}>)`, `![x](<${url}>)`, `[x][1]\n\n[1]: <${url}>`, `<${url}>`]) {
      const found = elementsOf(bodyOf(`Text ${text}`));
      expect(found.filter(({ name }) => name === 'a')).toEqual([]);
      for (const { attributes: own } of found.filter(({ name }) => name === 'img')) {
        expect(own.src).toMatch(/^\.\.\/\.\.\/(figures|pictures)\/[^/:]*(\/[^/:]+)*$/);
      }
      expectHarmless(bodyOf(`Text ${text}`));
    }
  });

  test.each([
    'https://example.org/a?b=c',
    'http://example.org',
    'mailto:a@example.org',
    'tel:+491234',
  ])('the address %s is a link', (url) => {
    const link = elementsOf(bodyOf(`[x](${url})`)).find(({ name }) => name === 'a');
    expect(link?.attributes.href).toBe(url);
  });

  test('pieces of markup in any order stay harmless', () => {
    const piece = fc.constantFrom(
      '<',
      '>',
      '"',
      "'",
      '&',
      '&lt;',
      '`',
      '[',
      ']',
      '(',
      ')',
      '{',
      '}',
      ':',
      '::',
      ':::',
      '\n',
      '\n\n',
      '1. ',
      '- ',
      '> ',
      '![',
      '](',
      'javascript:',
      'script',
      'onerror=',
      ' ',
      'x',
      'hazard',
      'figure',
      'src="',
      '<!--',
      '-->',
      '<![CDATA[',
      '#',
      '|',
      '\\',
      '[^1]',
      '[^1]: ',
      'https://e.org',
    );
    fc.assert(
      fc.property(fc.array(piece, { maxLength: 30 }), (pieces) => {
        expectHarmless(bodyOf(pieces.join('')));
      }),
      { numRuns: 400 },
    );
  });
});
