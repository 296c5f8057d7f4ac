import { describe, expect, test } from 'vitest';
import { bookOf } from './linked-manual.ts';

const machine = (items: string): Record<string, string> => ({
  'manual.yaml': 'title: Test\nvariants:\n  winch: [no, yes]\n',
  'machines/m.yaml': `machine: m\nname: M\n${items}`,
  'procedures/look.md': '---\nprocedure: look\ntitle: Look\n---\n\n1. Look.\n',
});

const items = `
fasteners: { bolt: { name: bolt, holds: cover } }
parts:
  cover: { name: 'cover <b>&"x"' }
  pump: { name: a hydraulic pump with a very long name, behind: cover, when: winch }
`;

describe('the pictures of a machine', () => {
  const [page] = bookOf(machine(items)).machines;
  const svg = page?.pictures[0]?.svgHtml ?? '';

  test('have each item once, as a link to its row', () => {
    expect([...svg.matchAll(/href="#([^"]*)"/g)].map(([, id]) => id)).toEqual([
      'bolt',
      'cover',
      'pump',
    ]);
  });

  test('place what comes off first on the left', () => {
    const left = [...svg.matchAll(/<rect x="([\d.]+)"/g)].map(([, x]) => Number(x));
    expect(left).toEqual(left.toSorted((a, b) => a - b));
    expect(new Set(left).size).toBe(3);
  });

  test('tell kinds of ties and items of some machines apart without colour', () => {
    expect([...svg.matchAll(/class="tie (\w+)"/g)].map(([, kind]) => kind)).toEqual([
      'holds',
      'behind',
    ]);
    expect(svg).toContain('<a href="#pump" class="some">');
    expect(page?.legendHtml).toContain('is in front of');
    expect(page?.legendHtml).not.toContain('takes along');
  });

  test('break long names and keep hostile ones text', () => {
    expect(svg.match(/<text/g)).toHaveLength(4);
    expect(svg).toContain('>cover &#x3C;b>&#x26;"x"</text>');
  });

  test('are the same for the same machine, and none where nothing is tied', () => {
    expect(bookOf(machine(items)).machines[0]?.pictures).toEqual(page?.pictures);
    const [bare] = bookOf(machine('parts: { lid: { name: lid } }\n')).machines;
    expect(bare?.pictures).toEqual([]);
    expect(bare?.legendHtml).toBe('');
  });
});

describe('the hazards of a book', () => {
  const { hazards, sheets } = bookOf({
    'manual.yaml': 'title: Test\n',
    'machines/m.yaml': `machine: m
name: M
parts: { blade: { name: blade, hazards: edge } }
hazards:
  edge: { signal: warning, hazard: Sharp edge., harm: Cuts, avoid: Wear gloves., raised-by: [{ verb: set-aside, item: blade }] }
  unused: { signal: notice, hazard: Dirt, harm: Wear, avoid: Wipe it. }
`,
    'procedures/a.md': `---
procedure: a
title: A
machine: m
---

::hazard{of=edge}

1. :remove{item=blade}

:::danger{hazard="Rope under load" harm="Death"}
Stand *clear* of it. See step 1.
:::

2. :install{item=blade}
`,
  });

  test('are those of the catalogue and those that only a sheet writes out, the worst first', () => {
    expect(hazards.map(({ signal, hazard, usedIn }) => [signal, hazard, usedIn.length])).toEqual([
      ['danger', 'Rope under load', 1],
      ['warning', 'Sharp edge', 1],
      ['notice', 'Dirt', 0],
    ]);
    expect(hazards[0]).toMatchObject({ anchor: 'a.1', avoid: 'Stand clear of it. See step 1.' });
  });

  test('say what raises them: actions, and work on items that carry them', () => {
    const link = { href: 'machines/m/index.html#blade', text: 'blade' };
    expect(hazards[1]?.raisedBy).toEqual([
      { words: 'set aside', item: link },
      { words: 'any work on', item: link },
    ]);
  });

  test('are where the lines of a sheet lead', () => {
    expect(sheets[0]?.hazards.map(({ row }) => row)).toEqual([
      'hazards/index.html#a.1',
      'hazards/index.html#m-edge',
    ]);
  });
});
