import { z } from 'zod';
import { signalSchema } from './catalogue.ts';
import { verbSchema } from './directives.ts';
import { ucumQuantitySchema } from './ucum-quantity.ts';

export const caseSchema = z
  .strictObject({
    condition: z
      .string()
      .optional()
      .describe('In the language of the manual; absent where only a technician can tell'),
    words: z.string().describe('for infeed winch; if the rope is cut'),
  })
  .describe('When it holds; absent where it always does');

export const itemSchema = z.strictObject({
  id: z.string().describe('Id of the entry in the catalogue'),
  name: z.string().describe('In the singular; the id where there is no such entry'),
});

export const countedItemSchema = itemSchema.extend({ count: z.int().min(1) });

export const procedureLinkSchema = z.strictObject({
  id: z.string(),
  title: z.string().describe('The id where the manual has no such procedure'),
});

const words = z.string().describe('As the sheet prints it: 80 N·m (59 lbf·ft)');

export const valueDataSchema = z.strictObject({
  words,
  quantity: ucumQuantitySchema.optional().describe('Absent where it cannot be read'),
});

const to = ucumQuantitySchema.describe('Torque');
const by = ucumQuantitySchema.describe('Angle');

const stageSchema = z.discriminatedUnion('does', [
  z.strictObject({ does: z.literal('tighten'), words, to }),
  z.strictObject({ does: z.literal('tighten-and-turn'), words, to, by }),
  z.strictObject({ does: z.literal('turn'), words, by }),
  z.strictObject({ does: z.literal('back-off'), words, by }),
]);

export const torqueDataSchema = z.strictObject({
  stages: z.array(stageSchema).min(1).describe('In the order of work'),
  threads: z.enum(['dry', 'oiled', 'plated', 'compound']).optional(),
});

export const fluidDataSchema = z.strictObject({
  specification: z.string(),
  amount: valueDataSchema
    .optional()
    .describe('What the action says, else the capacity of the circuit'),
  mix: z
    .array(z.strictObject({ name: z.string(), share: ucumQuantitySchema }))
    .optional()
    .describe('Shares by volume'),
});

export const actionDataSchema = z.strictObject({
  verb: verbSchema,
  item: itemSchema,
  words: z.string().optional().describe('In which the writer says it'),
  count: z.int().min(1).optional().describe('Pieces, at all instances together'),
  instances: z.array(z.string()).optional().describe('Where it is done: left, right'),
  new: z.literal(true).optional().describe('A new one goes in'),
  to: z.string().optional().describe('Position of a control'),
  torque: torqueDataSchema.optional(),
  fluid: fluidDataSchema.optional(),
  limit: valueDataSchema.optional().describe('What a reading must give'),
  with: z.array(itemSchema).optional().describe('Tools and consumables used'),
  when: caseSchema.optional(),
});

export const hazardDataSchema = z.strictObject({
  signal: signalSchema.describe('Signal word of ANSI Z535.6'),
  hazard: z.string(),
  harm: z.string(),
  avoid: z.string(),
  when: caseSchema.optional(),
});

export type CaseData = z.infer<typeof caseSchema>;
export type ItemData = z.infer<typeof itemSchema>;
export type TorqueData = z.infer<typeof torqueDataSchema>;
export type FluidData = z.infer<typeof fluidDataSchema>;
export type ActionData = z.infer<typeof actionDataSchema>;
export type HazardData = z.infer<typeof hazardDataSchema>;
export type ValueData = z.infer<typeof valueDataSchema>;
