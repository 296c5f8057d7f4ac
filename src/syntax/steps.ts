import type { List, ListItem } from 'mdast';
import type { LeafDirective } from 'mdast-util-directive';
import { stepSchema } from '../../schemas/directives.ts';
import type { Around } from './around.ts';
import { attributeReader } from './attributes.ts';
import { readBlocks } from './blocks.ts';
import { partsOf, tellLabel } from './label.ts';
import { tellMisplaced } from './misplaced.ts';
import type { Step, StepList } from './model.ts';
import { type Reading, spanOf } from './reading.ts';
import { torquedItems } from './torque-block.ts';

const readAttributes = attributeReader(stepSchema);

/** A numbered list: its items are steps, whatever the numbers. */
export function readSteps(reading: Reading, list: List, around: Around): StepList {
  const steps = list.children.map((item) => readStep(reading, item, around));
  return { type: 'steps', steps, place: reading.placeOf(list) };
}

function readStep(reading: Reading, item: ListItem, around: Around): Step {
  const [facts, ...others] = item.children.filter(isFacts);
  for (const other of others) {
    tellMisplaced(
      reading,
      other,
      'a second one in the same step',
      'one ::step in a step, with all that it says',
    );
  }
  const given = facts && readAttributes(reading, facts);
  for (const directive of facts ? [facts, ...others] : []) {
    if (partsOf(directive).label) tellLabel(reading, directive, 'no words in square brackets');
  }
  const content = item.children.filter((child) => !isFacts(child));
  const inside: Around = { ...around, torqued: torquedItems(item), scope: spanOf(item) };
  return {
    type: 'step',
    id: given?.ref('id'),
    needs: given?.refs('needs') ?? [],
    at: given?.ref('at'),
    when: given?.when(),
    people: given?.values.people ?? 1,
    time: given?.written('time'),
    wait: given?.written('wait'),
    tools: given?.refs('tools') ?? [],
    consumables: given?.refs('consumables') ?? [],
    changed: given?.written('changed'),
    blocks: readBlocks(reading, content, inside),
    place: reading.placeOf(item),
  };
}

function isFacts(child: ListItem['children'][number]): child is LeafDirective {
  return child.type === 'leafDirective' && child.name === 'step';
}
