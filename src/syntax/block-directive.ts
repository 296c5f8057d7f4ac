import {
  hazardBlockSchema,
  hazardReferenceSchema,
  itemBlockSchema,
  needsSchema,
  performSchema,
  reverseSchema,
} from '../../schemas/directives.ts';
import type { Around } from './around.ts';
import { attributeReader } from './attributes.ts';
import { readBlocks } from './blocks.ts';
import { readOptional } from './branch.ts';
import { tokensOf } from './directive-tokens.ts';
import { readFigure } from './figure.ts';
import type { BlockName } from './forms.ts';
import { readGuarded } from './guarded.ts';
import { type BlockDirective, labelAndBody, partsOf, tellLabel } from './label.ts';
import { formOf, tellMisplaced } from './misplaced.ts';
import type { Block } from './model.ts';
import type { Reading } from './reading.ts';
import { readRepeat } from './repeat.ts';
import { readTorqueBlock } from './torque-block.ts';
import { readWaiver } from './waiver.ts';

const readHazard = attributeReader(hazardBlockSchema);
const readHazardReference = attributeReader(hazardReferenceSchema);
const readItem = attributeReader(itemBlockSchema);
const readNeeds = attributeReader(needsSchema);
const readPerform = attributeReader(performSchema);
const readReverse = attributeReader(reverseSchema);

/** A block of the language. Where it lacks what makes it one, its body stays. */
export function readBlockDirective(
  reading: Reading,
  node: BlockDirective,
  name: BlockName,
  around: Around,
): readonly Block[] {
  const inside: Around = { ...around, outer: { name, tokens: tokensOf(node) } };
  const body = (): Block[] => {
    if (partsOf(node).label !== undefined) tellLabel(reading, node, 'no words in square brackets');
    return readBlocks(reading, labelAndBody(node), inside);
  };
  const place = reading.placeOf(node);
  switch (name) {
    case 'danger':
    case 'warning':
    case 'caution':
    case 'notice': {
      const given = readHazard(reading, node);
      const hazard = given.written('hazard');
      const harm = given.written('harm');
      const when = given.when();
      return [
        { type: 'hazard', signal: name, of: undefined, hazard, harm, when, blocks: body(), place },
      ];
    }
    case 'hazard': {
      const given = readHazardReference(reading, node);
      const of = given.ref('of');
      const when = given.when();
      const blocks = body();
      if (of === undefined) return blocks;
      return [
        {
          type: 'hazard',
          signal: undefined,
          of,
          hazard: undefined,
          harm: undefined,
          when,
          blocks,
          place,
        },
      ];
    }
    case 'torque':
      return readTorqueBlock(reading, node, around, body);
    case 'fluid': {
      const given = readItem(reading, node);
      const item = given.ref('item');
      const when = given.when();
      const blocks = body();
      return item === undefined ? blocks : [{ type: 'fluid', item, when, blocks, place }];
    }
    case 'needs': {
      const steps = readNeeds(reading, node).refs('step');
      const blocks = body();
      return steps.length === 0 ? blocks : [{ type: 'needs', steps, blocks, place }];
    }
    case 'figure':
      return readFigure(reading, node, inside);
    case 'callout':
      if (formOf(node) === 'leaf') {
        tellMisplaced(
          reading,
          node,
          'outside a figure',
          'its place directly between :::figure and its :::',
        );
      }
      return body();
    case 'perform': {
      const given = readPerform(reading, node);
      const procedure = given.ref('procedure');
      const when = given.when();
      const blocks = body();
      if (procedure === undefined) return blocks;
      const part = given.ref('part');
      const each = given.ref('each');
      const inPlace = given.values['in-place'] ?? false;
      return [{ type: 'perform', procedure, part, each, inPlace, when, place }, ...blocks];
    }
    case 'reverse': {
      const given = readReverse(reading, node);
      const of = given.ref('of');
      const when = given.when();
      const blocks = body();
      if (of === undefined) return blocks;
      return [{ type: 'reverse', of, except: given.refs('except'), when, blocks, place }];
    }
    case 'waive':
      readWaiver(reading, node, around);
      return [];
    case 'when':
      return readGuarded(reading, node, inside);
    case 'repeat':
      return [readRepeat(reading, node, around)];
    case 'if':
      return [readOptional(reading, node, around)];
    case 'either':
    case 'or':
      if (formOf(node) === 'block') {
        tellMisplaced(
          reading,
          node,
          'no :::either before it',
          'its place directly after :::either or another :::or',
        );
      }
      return [readOptional(reading, node, around)];
    case 'step':
      if (formOf(node) === 'leaf') {
        tellMisplaced(
          reading,
          node,
          'outside a numbered step',
          'its place in an item of a numbered list, as far in as the words of the item',
        );
      }
      return body();
  }
}
