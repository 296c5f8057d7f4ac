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
};

const behind = idsSchema
  .default([])
  .describe('What must be off before this can be reached, and back on only after it');

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
export const patternSchema = z.union(
  [
    z.strictObject({ circle: count }),
    z.strictObject({ rows: z.array(count).min(1) }),
    z.strictObject({ rectangle: z.tuple([count, count]) }),
    z.strictObject({ positions: z.array(pointXY).min(2) }),
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
  behind,
});

export const partSchema = z.strictObject({
  ...common,
  count: count.default(1),
  behind,
  mass: quantityTextSchema.optional(),
  'single-use': z.boolean().default(false),
});

export const connectionSchema = z.strictObject({
  ...common,
  type: z.enum(['connector', 'hose', 'pipe', 'cable', 'clip', 'linkage']),
  count: count.default(1),
  circuit: idSchema.optional(),
  'cap-when-open': z.boolean().default(false),
  on: idSchema.optional().describe('The part it belongs to: apart before the part comes off'),
  behind,
  torque: torqueSchema.optional(),
});

export const circuitSchema = z.strictObject({
  ...common,
  fluid: text.describe('Specification of the fluid'),
  capacity: quantityTextSchema,
  mix: z
    .record(text, quantityTextSchema)
    .optional()
    .describe('Shares by volume: concentrate: 50 %'),
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

export const aidSchema = z.strictObject({
  ...common,
  count: count.default(1),
  blocks: idsSchema.default([]).describe('Parts that cannot go in while this is fitted'),
});

export const toolSchema = z.strictObject({ ...common, size: text.optional() });
export const consumableSchema = z.strictObject({ ...common, specification: text.optional() });

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
export type MachineInput = z.output<typeof machineSchema>;
export type TorqueInput = z.output<typeof torqueSchema>;
export type Pattern = z.output<typeof patternSchema>;
export type Signal = z.output<typeof signalSchema>;
export type HazardEntry = z.output<typeof hazardSchema>;
