import { describe, expect, test } from 'vitest';
import { directiveAt } from '../../src/editor/directive-at.ts';

/** What stands at the mark ‸ in a text. */
function at(marked: string) {
  const offset = marked.indexOf('‸');
  const text = marked.replace('‸', '');
  const found = directiveAt(text, offset);
  return (
    found && {
      name: found.name,
      colons: found.colons,
      part: found.at.part,
      text: text.slice(found.at.from, found.at.to),
      ...(found.at.part === 'value' && { key: found.at.key }),
      given: [...found.given.keys()],
    }
  );
}

describe('the directive at an offset', () => {
  test.for([
    ['1. :rem‸', { name: 'rem', colons: 1, part: 'name', text: 'rem' }],
    ['1. :re‸move{item=x}', { name: 'remove', colons: 1, part: 'name', text: 'remove' }],
    [':::‸', { name: '', colons: 3, part: 'name', text: '' }],
    [':remove{‸', { name: 'remove', part: 'key', text: '', given: [] }],
    [':remove{item=anvil q‸', { part: 'key', text: 'q', given: ['item'] }],
    [':remove{‸ qty=2}', { part: 'key', text: '', given: ['qty'] }],
    [':remove{item=‸', { part: 'value', key: 'item', text: '' }],
    [':remove{item=an‸vil qty=2}', { part: 'value', key: 'item', text: 'anvil', given: ['qty'] }],
    [':remove[the {odd} bolt]{item=an‸', { part: 'value', key: 'item', text: 'an' }],
    [':check{item=a when="feed = ‸', { part: 'value', key: 'when', text: 'feed = ' }],
    [":check{when='a}b' item=x‸", { part: 'value', key: 'item', text: 'x', given: ['when'] }],
    ['::step{#stu‸ people=2}', { name: 'step', part: 'value', key: 'id', text: 'stu' }],
    [':::when[feed = ‸', { name: 'when', part: 'label', text: 'feed = ' }],
    [':::when[feed = h‸yd]', { name: 'when', part: 'label', text: 'feed = hyd' }],
    [':remove{item=a}, then :install{item=b‸}', { name: 'install', key: 'item', text: 'b' }],
    ['::step{people=2\n   needs=a‸}', { name: 'step', key: 'needs', text: 'a' }],
  ] as const)('%s', ([text, expected]) => expect(at(text)).toMatchObject(expected));

  test.for([
    'plain words‸',
    ':remove{item=a} and then‸',
    ':remove{item=a\n\nAnother paragraph‸',
    'at 12:30‸',
    '‸:remove{item=a}',
  ])('none: %s', (text) => expect(at(text)).toBeUndefined());
});
