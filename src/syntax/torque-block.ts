import type { ListItem, Nodes } from 'mdast';
import { itemBlockSchema } from '../../schemas/directives.ts';
import type { Around } from './around.ts';
import { attributeReader } from './attributes.ts';
import { tokensOf } from './directive-tokens.ts';
import type { BlockDirective } from './label.ts';
import type { Action, Block, Ref } from './model.ts';
import type { Reading } from './reading.ts';

const readAttributes = attributeReader(itemBlockSchema);

/** `torque` as a block: it stands for the action where the step has no `:torque` of the item. */
export function readTorqueBlock(
  reading: Reading,
  node: BlockDirective,
  { torqued }: Around,
  body: () => readonly Block[],
): readonly Block[] {
  const given = readAttributes(reading, node);
  const item = given.ref('item');
  const when = given.when();
  const stands = item !== undefined && torqued !== undefined && !torqued.has(item.id);
  if (stands) torqued.add(item.id);
  const blocks = body();
  if (item === undefined) return blocks;
  const action = stands ? actionOf(reading, node, item) : undefined;
  return [{ type: 'torque', item, when, blocks, action, place: reading.placeOf(node) }];
}

/** The items that have a `:torque` in a step or below it. */
export function torquedItems(step: ListItem): Set<string> {
  const items = new Set<string>();
  const open: Nodes[] = [step];
  for (let node = open.pop(); node !== undefined; node = open.pop()) {
    if (node.type === 'textDirective' && node.name === 'torque' && node.attributes?.item) {
      items.add(node.attributes.item);
    }
    if ('children' in node) for (const child of node.children) open.push(child);
  }
  return items;
}

/** The block's own condition holds for it, so it has none. */
function actionOf(reading: Reading, node: BlockDirective, item: Ref): Action {
  return {
    type: 'action',
    verb: 'torque',
    item,
    qty: undefined,
    isNew: false,
    to: undefined,
    amount: undefined,
    value: undefined,
    limit: undefined,
    each: [],
    with: [],
    angle: undefined,
    when: undefined,
    words: '',
    place: reading.place(tokensOf(node).opening),
    node: undefined,
  };
}
