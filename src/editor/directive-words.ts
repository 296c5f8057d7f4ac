import type { z } from 'zod';
import {
  actionSchema,
  calloutSchema,
  figureSchema,
  hazardBlockSchema,
  hazardReferenceSchema,
  itemBlockSchema,
  labelledSchema,
  needsSchema,
  performSchema,
  reverseSchema,
  stepSchema,
  type Verb,
  waiveSchema,
} from '../../schemas/directives.ts';

/** How often the name is written with colons before it. */
export type Colons = 1 | 2 | 3;

/** A directive as one of its forms: what it is for, and what may stand in its braces. */
export interface DirectiveForm {
  readonly name: string;
  readonly colons: Colons;
  readonly does: string;
  readonly attributes: z.ZodObject;
  /** The attribute that is asked for first; undefined where the words in brackets matter. */
  readonly first: string | undefined;
}

const verbs: Readonly<Record<Verb, string>> = {
  remove: 'takes pieces off the machine',
  install: 'puts pieces back that are out',
  replace: 'takes the old one out and puts a new one in',
  loosen: 'undoes a fastener without taking it out',
  tighten: 'tightens by feel or to a stated tightness',
  torque: 'tightens to the torque of the catalogue',
  disconnect: 'parts a hose, pipe, cable or plug',
  connect: 'joins it again',
  cap: 'closes an open end',
  uncap: 'takes the cap off again',
  'set-aside': 'moves a part out of the way while it stays connected',
  return: 'brings it back to its place',
  drain: 'lets the fluid of a circuit out',
  fill: 'fills a circuit',
  bleed: 'lets the air out of a circuit',
  relieve: 'lets the pressure off a circuit',
  isolate: 'cuts energy off: battery, lockout point, spring, raised load',
  restore: 'puts the energy back',
  fit: 'fits an aid for the work: a stand, a pin, a plug',
  withdraw: 'takes the aid away again',
  set: 'moves a control to a position',
  discard: 'throws pieces away',
  apply: 'puts a consumable on',
  check: 'looks or feels whether something is as it should be',
  measure: 'reads a figure, and holds it against its limit',
};

type Block = readonly [name: string, colons: Colons, does: string, z.ZodObject, first?: string];

const blocks: readonly Block[] = [
  ['step', 2, 'gives its step a name and facts: people, time, needs', stepSchema, ''],
  ['hazard', 2, 'prints a hazard of the catalogue', hazardReferenceSchema, 'of'],
  ['danger', 3, 'will kill or maim if not avoided', hazardBlockSchema, 'hazard'],
  ['warning', 3, 'could kill or maim if not avoided', hazardBlockSchema, 'hazard'],
  ['caution', 3, 'could hurt lightly if not avoided', hazardBlockSchema, 'hazard'],
  ['notice', 3, 'about damage, not about people', hazardBlockSchema, 'hazard'],
  ['torque', 2, 'prints the torque box of an item', itemBlockSchema, 'item'],
  ['torque', 3, 'prints the torque box of an item, with words of its own', itemBlockSchema, 'item'],
  ['fluid', 2, 'prints what is known of a fluid', itemBlockSchema, 'item'],
  ['fluid', 3, 'prints what is known of a fluid, with words of its own', itemBlockSchema, 'item'],
  ['needs', 2, 'steps that must be done before this one', needsSchema, 'step'],
  ['needs', 3, 'steps that must be done before this one, and why', needsSchema, 'step'],
  ['figure', 2, 'a picture', figureSchema, 'src'],
  ['figure', 3, 'a picture with call-outs or a caption', figureSchema, 'src'],
  ['callout', 2, 'a number in a figure', calloutSchema, 'item'],
  ['perform', 2, 'does another procedure, or a section of one, here', performSchema, 'procedure'],
  ['reverse', 2, 'writes out the way back of a section', reverseSchema, 'of'],
  ['reverse', 3, 'writes out the way back, with steps of your own among it', reverseSchema, 'of'],
  ['waive', 3, 'lets a finding pass; the reason is its body', waiveSchema, 'rule'],
  ['when', 3, 'only for some machines', labelledSchema],
  ['repeat', 3, 'is done until what the words say', labelledSchema],
  ['if', 3, 'is done if the technician finds what the words say', labelledSchema],
  ['either', 3, 'the first of the ways of which one is taken', labelledSchema],
  ['or', 3, 'another way of those of which one is taken', labelledSchema],
];

/** Every directive in each of its forms. */
export const directiveForms: readonly DirectiveForm[] = [
  ...Object.entries(verbs).map(
    ([name, does]): DirectiveForm => ({
      name,
      colons: 1,
      does,
      attributes: actionSchema,
      first: 'item',
    }),
  ),
  ...blocks.map(
    ([name, colons, does, attributes, first]): DirectiveForm => ({
      name,
      colons,
      does,
      attributes,
      first,
    }),
  ),
];

/** The form with this name and number of colons; more than three are a block around blocks. */
export function directiveForm(name: string, colons: number): DirectiveForm | undefined {
  return directiveForms.find((form) => form.name === name && form.colons === Math.min(3, colons));
}
