import { describe, expect, test } from 'vitest';
import { verbSchema } from '../../schemas/directives.ts';
import { actionsIn, allActions } from '../../src/link/index.ts';
import { dataOf, read } from './carets.ts';

describe('an action', () => {
  test.each(verbSchema.options)('%s', (verb) => {
    const { procedure } = read(`:${verb}[the words]{item=anvil-bolt}`);
    const [action] = [...allActions(procedure)];
    expect(action).toMatchObject({ verb, item: { id: 'anvil-bolt' }, words: 'the words' });
  });

  test('has all its attributes, each with its place', () => {
    const { procedure, text } = read(
      `:install[Fit **four** new\nbolts]{item=anvil-bolt qty=4 new when="feed = hydraulic" to='left' amount="2 L" value="22 N·m" each="left, right" with=grease}`,
    );
    const [action] = [...allActions(procedure)];
    const slice = (place: { start: { offset: number }; end: { offset: number } } | undefined) =>
      text.slice(place?.start.offset, place?.end.offset);
    expect(action?.words).toBe('Fit four new bolts');
    expect(action?.isNew).toBe(true);
    expect(action?.qty?.count).toBe(4);
    expect(slice(action?.qty?.place)).toBe('4');
    expect(slice(action?.item.place)).toBe('anvil-bolt');
    expect(slice(action?.when?.place)).toBe('feed = hydraulic');
    expect(slice(action?.to?.place)).toBe('left');
    expect(action?.amount?.text).toBe('2 L');
    expect(slice(action?.amount?.place)).toBe('2 L');
    expect(slice(action?.value?.place)).toBe('22 N·m');
    expect(action?.each.map((ref) => slice(ref.place))).toEqual(['left', 'right']);
    expect(action?.with.map(({ id }) => id)).toEqual(['grease']);
    expect(action?.node?.type).toBe('textDirective');
  });

  test('has no words where they come from the catalogue', () => {
    const [action] = [...allActions(read(':remove{item=anvil-bolt}').procedure)];
    expect(action?.words).toBe('');
  });

  test('is gathered from all kinds of text in order of reading', () => {
    const { procedure } = read(`Text :remove{item=a}.

> Quoted *:remove{item=b}*

- bullet :remove{item=c}
  1. :remove{item=d}

| table | :remove{item=e} |
|-------|-----------------|
| x     | [:remove{item=f}](page.md) |

1. Step :remove{item=g}.

   :::danger{hazard="It falls" harm="Crushing"}
   First :fit{item=h}.
   :::
   - inner :remove{item=i}
2. :remove{item=j}`);
    expect([...allActions(procedure)].map(({ item }) => item.id)).toEqual([...'abcdefghij']);
  });

  test('keeps its node in the prose', () => {
    const { procedure } = read('Then :remove[take it out]{item=a} and go.');
    const [block] = procedure.sections[0]?.blocks ?? [];
    if (block?.type !== 'prose' || block.node.type !== 'paragraph') throw new Error('no paragraph');
    expect(block.node.children[1]).toBe([...actionsIn([block])][0]?.node);
  });
});

describe('a faulty action', () => {
  test('without item is told and no action', () => {
    const result = read(`Take :remove[the bolts] out.
     ^^^^^^^^^^^^^^^^^^ attribute-wrong`);
    expect([...allActions(result.procedure)]).toEqual([]);
    expect(dataOf(result)).toMatchObject({ directive: 'remove', attribute: 'item' });
  });

  test('with a misspelt attribute is one fact, with the near name', () => {
    const result = read(`:remove{itme=a qty=2}
        ^^^^ attribute-wrong`);
    expect(dataOf(result)).toMatchObject({ attribute: 'itme', near: 'item' });
  });

  test('loses only what is wrong', () => {
    const { procedure } = read(`:remove{item=a qty=0 when="feed =" each="left, Right" colour=red}
                   ^ attribute-wrong
                           ^^^^^^ condition-wrong
                                               ^^^^^ attribute-wrong
                                                      ^^^^^^ attribute-wrong`);
    const [action] = [...allActions(procedure)];
    expect(action).toMatchObject({ item: { id: 'a' }, qty: undefined, when: undefined, each: [] });
  });

  test('with an item that is no id', () => {
    const result = read(`:remove{item=anvil_bolt}
             ^^^^^^^^^^ attribute-wrong`);
    const expected = 'an id: small letters and digits joined by hyphens, such as anvil-bolt';
    expect(dataOf(result)).toMatchObject({ attribute: 'item', found: 'anvil_bolt', expected });
  });

  test('with an empty value', () => {
    read(`:fill{item=coolant amount=""} :remove{item=a qty}
                   ^^^^^^^^^ attribute-wrong
                                             ^^^ attribute-wrong`);
  });

  test('with an attribute given twice', () => {
    const result = read(`:remove{item=a item=b}
               ^^^^ attribute-wrong`);
    expect(dataOf(result)).toMatchObject({ found: 'item=b', expected: 'to be given once' });
    expect([...allActions(result.procedure)][0]?.item.id).toBe('a');
  });

  test('with shortcuts', () => {
    read(`:remove{item=a #name .red}
               ^^^^^ attribute-wrong
                     ^^^^ attribute-wrong`);
  });

  test.each(['{item=}', '{item="a}', '[a {item=a}'])('with %s, which does not close', (rest) => {
    const result = read(`Now :remove${rest} it.
    ^^^^^^^^ attribute-wrong`);
    expect(dataOf(result)).toMatchObject({ attribute: rest.startsWith('[') ? '[…]' : '{…}' });
    expect([...allActions(result.procedure)]).toEqual([]);
  });

  test('in a heading, a label or another action is misplaced, and its words stay', () => {
    const { procedure } = read(`## :remove[Removal]{item=a}
   ^^^^^^^^^^^^^^^^^^^^^^^^ directive-misplaced

:::if[the :check[belt]{item=b} is cracked]
          ^^^^^^^^^^^^^^^^^^^^ directive-misplaced
:remove[take :loosen[it]{item=c} off]{item=d}
             ^^^^^^^^^^^^^^^^^^^ directive-misplaced
:::`);
    expect(procedure.sections[0]?.title).toBe('Removal');
    expect([...allActions(procedure)].map(({ item, words }) => [item.id, words])).toEqual([
      ['d', 'take it off'],
    ]);
  });
});

describe('places of attributes', () => {
  test('hold over lines of a quotation', () => {
    const { procedure, text } = read(`> :remove[a\n> b]{item="anvil"\n>   qty = 4}`);
    const [action] = [...allActions(procedure)];
    const start = text.indexOf('anvil"');
    expect(action?.item.place.start.offset).toBe(start);
    expect(action?.qty?.place.start.offset).toBe(text.indexOf('4}'));
    expect(action?.item.place.start).toMatchObject({ line: 7, column: 12 });
  });

  test('hold where a character reference makes the value differ from the source', () => {
    const { procedure, text } = read(':torque{item=a value="22 N&middot;m"}');
    const [action] = [...allActions(procedure)];
    expect(action?.value?.text).toBe('22 N·m');
    const { start, end } = action?.value?.place ?? procedure.place;
    expect(text.slice(start.offset, end.offset)).toBe('22 N&middot;m');
  });
});
