import { describe, expect, test } from 'vitest';
import { yamlAt } from '../../src/editor/yaml-at.ts';
import { keysOf, shapesAt, valuesOf } from '../../src/editor/yaml-shapes.ts';

function at(marked: string) {
  const offset = marked.indexOf('‸');
  const found = yamlAt(marked.replace('‸', ''), 0, offset);
  return found && { path: found.path.join('.'), key: found.key, typed: found.typed };
}

describe('the key or value at an offset of YAML', () => {
  test.for([
    ['ti‸', { path: '', typed: 'ti' }],
    ['title: Te‸', { path: '', key: 'title', typed: 'Te' }],
    ['fasteners:\n  anvil-bolt:\n    th‸', { path: 'fasteners.anvil-bolt', typed: 'th' }],
    [
      'fasteners:\n  anvil-bolt:\n    holds: an‸',
      { path: 'fasteners.anvil-bolt', key: 'holds', typed: 'an' },
    ],
    ['fasteners:\n  a: { name: b, th‸', { path: 'fasteners.a', typed: 'th' }],
    [
      'fasteners:\n  a: { name: b, holds: an‸ }',
      { path: 'fasteners.a', key: 'holds', typed: 'an' },
    ],
    ['fasteners:\n  a:\n    holds: [lid, an‸]', { path: 'fasteners.a', key: 'holds', typed: 'an' }],
    [
      'fasteners:\n  a:\n    holds:\n      - an‸',
      { path: 'fasteners.a.holds', key: 'holds', typed: 'an' },
    ],
    ['never:\n  - win‸', { path: 'never', key: 'never', typed: 'win' }],
    ['hazards:\n  h:\n    raised-by:\n      - { it‸', { path: 'hazards.h.raised-by', typed: 'it' }],
    ['fasteners:\n  a:\n    name: x\nparts:\n  b:\n    ma‸', { path: 'parts.b', typed: 'ma' }],
  ] as const)('%s', ([text, expected]) => expect(at(text)).toMatchObject(expected));

  test('nothing in a comment', () => expect(at('title: x # remo‸')).toBeUndefined());
});

test('keys and values of the schemas by path', () => {
  const keys = (path: readonly string[]) => keysOf(shapesAt('machine', path)).map(({ key }) => key);
  expect(keys([])).toEqual(expect.arrayContaining(['machine', 'fasteners', 'hazards']));
  expect(keys(['fasteners', 'any'])).toEqual(expect.arrayContaining(['torque', 'holds']));
  expect(keys(['fasteners', 'any', 'pattern'])).toEqual(expect.arrayContaining(['circle', 'rows']));
  expect(keys(['hazards', 'any', 'raised-by'])).toEqual(['verb', 'item']);
  expect(valuesOf(shapesAt('machine', ['connections', 'any', 'type']))).toContain('hose');
  expect(valuesOf(shapesAt('machine', ['parts', 'any', 'single-use']))).toEqual(['true', 'false']);
  expect(keysOf(shapesAt('front', ['history'])).map(({ key }) => key)).toEqual([
    'revision',
    'date',
    'change',
  ]);
  expect(keysOf(shapesAt('front', ['nothing', 'below']))).toEqual([]);
});
