import type { TextDirective } from 'mdast-util-directive';
import { toString as textOf } from 'mdast-util-to-string';
import { actionSchema, type Verb } from '../../schemas/directives.ts';
import { attributeReader } from './attributes.ts';
import type { Action } from './model.ts';
import { type Reading, spanOf } from './reading.ts';

const readAttributes = attributeReader(actionSchema);

/** The action that a text directive states; undefined where the item is missing or is no id. */
export function readAction(reading: Reading, node: TextDirective, verb: Verb): Action | undefined {
  const given = readAttributes(reading, node);
  const item = given.ref('item');
  if (item === undefined) return undefined;
  const { qty, new: isNew = false } = given.values;
  return {
    type: 'action',
    verb,
    item,
    qty: qty === undefined ? undefined : { count: qty, place: given.place('qty') },
    isNew,
    to: given.ref('to'),
    amount: given.written('amount'),
    value: given.written('value'),
    limit: given.ref('limit'),
    each: given.refs('each'),
    with: given.refs('with'),
    angle: given.written('angle'),
    when: given.when(),
    words: wordsOf(node),
    place: reading.place(spanOf(node)),
    node,
  };
}

/** The words of a label on one line. */
export function wordsOf(node: Parameters<typeof textOf>[0]): string {
  return textOf(node).replace(/\s+/g, ' ').trim();
}
