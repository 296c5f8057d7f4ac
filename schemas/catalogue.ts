import { z } from 'zod';
import {
  countSchema as count,
  idSchema,
  idsSchema,
  labelSchema as label,
  quantityTextSchema,
  whenSchema,
} from './id.ts';

const text = z.string().min(1);

const common = {
  name: text.describe('What a sheet prints, without article: anvil bolt'),
  plural: text.optional().describe('Only where adding an s is wrong'),
  note: text.optional(),
  figure: text.optional(),
  'part-number': label.optional(),
  hazards: idsSchema.default([]).describe('Hazards that touching this raises'),
  when: whenSchema.optional(),
  in: idSchema.optional().describe('The assembly that this is part of: gone and back with it'),
  'also-called': z.array(text).default([]).describe('Other nouns that mean it'),
  each: z.array(idSchema).min(2).optional().describe('Instances, such as left and right'),
  limits: z
    .union(
      [quantityTextSchema, z.record(idSchema, quantityTextSchema)],
      'a limit such as max 1.5 mm, or limits by name: { gap: 1.0..1.5 mm, wear: max 2 mm }',
    )
    .optional()
    .describe('What a measurement of it must give: 1.0..1.5 mm, or several by name'),
};

const behind = idsSchema
  .default([])
  .describe('What must be off before this can be reached, and back on only after it');

const fitting = {
  facing: text.optional().describe('Which way round it goes in: lip towards the rod'),
  coat: idsSchema.default([]).describe('Consumables that go on it before it goes in'),
};
const renewWith = idsSchema
  .default([])
  .describe('What must come in new whenever this does: the other half of a matched set');

const torqueSchema = z.union(
  [
    quantityTextSchema,
    z.array(quantityTextSchema).min(1).describe('Stages, in order'),
    z.strictObject({
      stages: z.union(
        [quantityTextSchema, z.array(quantityTextSchema).min(1)],
        'a torque such as 22 N·m, or a list of stages',
      ),
      threads: z.enum(['dry', 'oiled', 'plated', 'compound']).optional(),
    }),
  ],
  'a torque such as 22 N·m, a list of stages, or keys stages and threads',
);

const pointXY = z.tuple([z.number(), z.number()]);
const patternSchema = z.union(
  [
    z.strictObject({ circle: count.describe('Evenly on a circle') }),
    z.strictObject({ rows: z.array(count).min(1).describe('How many in each row, top to bottom') }),
    z.strictObject({
      rectangle: z
        .tuple([count, count])
        .describe('Around a rectangle: along the top and down a side, corners counted in both'),
    }),
    z.strictObject({
      positions: z.array(pointXY).min(2).describe('x to the right, y up, in any unit'),
    }),
  ],
  'one key of circle, rows, rectangle or positions',
);

export const fastenerSchema = z.strictObject({
  ...common,
  count: count.default(1),
  thread: text.optional(),
  class: label.optional().describe('Property class, ISO 898-1, such as 8.8'),
  grade: label.optional().describe('Grade, SAE J429, such as 5'),
  torque: torqueSchema.optional(),
  tightness: z.enum(['hand-tight', 'snug', 'until-drag']).optional(),
  stack: z
    .array(text)
    .default([])
    .describe('Washers and locks that go with each, in order from the head'),
  pattern: patternSchema.optional(),
  'single-use': z.boolean().default(false),
  holds: idsSchema.default([]).describe('The part or parts it secures'),
  'lets-go-when': z
    .enum(['out', 'loose'])
    .default('out')
    .describe('How far undone the part comes free'),
  'most-undone': count
    .optional()
    .describe('How many may be loose or out at a time, at each instance'),
  'check-again': text
    .optional()
    .describe('When the torque must be checked again, as printed: after 50 km'),
  behind,
  ...fitting,
  'renew-with': renewWith,
});

export const partSchema = z.strictObject({
  ...common,
  count: count.default(1),
  behind,
  mass: quantityTextSchema.optional(),
  'single-use': z.boolean().default(false),
  ...fitting,
  'renew-with': renewWith,
});

export const connectionSchema = z.strictObject({
  ...common,
  type: z.enum(['connector', 'hose', 'pipe', 'cable', 'clip', 'linkage']),
  count: count.default(1),
  circuit: idSchema.optional(),
  loss: quantityTextSchema
    .optional()
    .describe('About how much of the circuit runs out when it is opened: 0.5 L'),
  'cap-when-open': z.boolean().default(false),
  on: idSchema.optional().describe('The part it belongs to: apart before the part comes off'),
  behind,
  torque: torqueSchema.optional(),
  coat: fitting.coat,
});

const sizes = z.array(quantityTextSchema).min(1);

export const circuitSchema = z.strictObject({
  ...common,
  fluid: text.describe('Specification of the fluid'),
  capacity: quantityTextSchema,
  mix: z
    .record(text, quantityTextSchema)
    .optional()
    .describe('Shares by volume, that of the concentrate first: concentrate: 50 %'),
  base: z
    .enum(['ethylene-glycol', 'propylene-glycol'])
    .optional()
    .describe('What the concentrate is made of, for its freezing point'),
  'never-with': idsSchema
    .default([])
    .describe('Other circuits and consumables whose fluid must never get into this one'),
  containers: z
    .union(
      [sizes, z.record(text, sizes)],
      'a list of sizes such as [1 L, 5 L], or one for each fluid of the mix: { concentrate: [1 L, 5 L] }',
    )
    .optional()
    .describe('Sizes that it is sold in; of a mix, those of each fluid that is bought'),
  drain: idsSchema
    .default([])
    .describe('Plugs, cocks or hoses through which it drains; shut again before filling'),
  fill: idsSchema.default([]).describe('Caps or plugs through which it is filled'),
  bleed: text
    .optional()
    .describe('How the air comes out; its presence means that the circuit must be bled'),
  pressure: z
    .union([quantityTextSchema, z.boolean()], 'a pressure such as 180 bar, or true or false')
    .optional()
    .describe('Stands under pressure: relieve before opening'),
  dispose: text.optional().describe('What becomes of the old fluid'),
  'leak-check': z
    .boolean()
    .default(false)
    .describe('After it has been open, a check for leaks must follow'),
});

export const energySchema = z.strictObject({
  ...common,
  type: z.enum([
    'electrical',
    'lockout-point',
    'spring',
    'raised-load',
    'hydraulic',
    'pneumatic',
    'thermal',
  ]),
  'isolate-before': idsSchema
    .default([])
    .describe('Items that must not be worked on while this is live'),
});

export const controlSchema = z.strictObject({
  ...common,
  positions: z.array(idSchema).min(2),
  home: idSchema,
});

const lifts = z.boolean().default(false).describe('Carries a part that is too heavy to lift');

export const aidSchema = z.strictObject({
  ...common,
  count: count.default(1),
  blocks: idsSchema.default([]).describe('Parts that cannot go in while this is fitted'),
  lifts,
});

export const toolSchema = z.strictObject({
  ...common,
  size: text.optional(),
  lifts,
  length: quantityTextSchema
    .optional()
    .describe('Of a torque wrench: from its drive to the middle of its grip'),
  extension: quantityTextSchema
    .optional()
    .describe('Of a crowfoot or extension for a torque wrench: from its drive to the bolt'),
});
export const consumableSchema = z.strictObject({
  ...common,
  specification: text.optional(),
  containers: sizes.optional().describe('Sizes that it is sold in: [50 mL, 250 mL]'),
});

export const signalSchema = z.enum(['danger', 'warning', 'caution', 'notice']);
export const hazardSchema = z.strictObject({
  signal: signalSchema,
  hazard: text.describe('What can hurt: Cutting drum can turn by hand'),
  harm: text.describe('What it does: Amputation'),
  avoid: text.describe('How to avoid it, as an instruction'),
  'raised-by': z
    .array(z.strictObject({ verb: text.optional(), item: idSchema }))
    .default([])
    .describe('Actions that raise it; any action on the item when no verb is given'),
  first: z
    .array(z.strictObject({ verb: text, item: idSchema }))
    .default([])
    .describe('What must be done before an action raises it: { verb: check, item: mains }'),
  when: whenSchema.optional(),
});

const entries = <T extends z.ZodType>(schema: T) => z.record(idSchema, schema).default({});

/** The entries of one machine; a procedure's front matter may carry the same under `items:`. */
export const itemsSchema = z.strictObject({
  fasteners: entries(fastenerSchema),
  parts: entries(partSchema),
  connections: entries(connectionSchema),
  circuits: entries(circuitSchema),
  energy: entries(energySchema),
  controls: entries(controlSchema),
  aids: entries(aidSchema),
  tools: entries(toolSchema),
  consumables: entries(consumableSchema),
  hazards: entries(hazardSchema),
});

/** `machines/<id>.yaml`. */
export const machineSchema = z.strictObject({
  machine: idSchema.describe('Id of the machine; the same as the name of the file'),
  name: text,
  note: text.optional(),
  figure: text.optional(),
  ...itemsSchema.shape,
});

export type ItemsInput = z.output<typeof itemsSchema>;
export type TorqueInput = z.output<typeof torqueSchema>;
export type Pattern = z.output<typeof patternSchema>;
export type Signal = z.output<typeof signalSchema>;
export type HazardEntry = z.output<typeof hazardSchema>;
