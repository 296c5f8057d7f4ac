import { z } from 'zod';
import { itemsSchema } from './catalogue.ts';
import { idSchema, labelSchema, whenSchema } from './id.ts';

const text = z.string().min(1);

/** States by item at the start or the end of a procedure: `coolant: drained`, `anvil-bolt: out`, or `{ out: 4, tight: 4 }`. */
export const statesSchema = z.record(
  idSchema,
  z.union([idSchema, z.record(idSchema, z.int().min(0))]),
);

/** The YAML front matter of a procedure. */
export const frontMatterSchema = z.strictObject({
  procedure: idSchema.describe('Id of the procedure, unique in the manual'),
  title: text,
  machine: idSchema
    .optional()
    .describe('Whose catalogue it speaks of; may be left out where the manual has one machine'),
  document: labelSchema
    .optional()
    .describe('Document number after the prefix of the manual; the id where there is none'),
  when: whenSchema.optional(),
  revision: z.union([text, z.number()]).transform(String).optional(),
  system: text.optional().describe('Heading under which the contents page lists it'),
  summary: text.optional().describe('One sentence: what the job is and when it is done'),
  interval: text.optional().describe('Service interval, as printed: every 250 h or yearly'),
  people: z.int().min(1).optional(),
  tools: z.array(idSchema).default([]),
  consumables: z.array(idSchema).default([]),
  starts: statesSchema
    .default({})
    .describe('States at the start, where they are not the home states'),
  'follow-on': z
    .array(idSchema)
    .default([])
    .describe('Procedures to do after this one, printed at the end of its sheet'),
  leaves: statesSchema
    .default({})
    .describe('States at the end, where they are not the home states'),
  history: z
    .array(
      z.strictObject({
        revision: z.union([text, z.number()]).transform(String),
        date: text,
        change: text,
      }),
    )
    .default([]),
  items: itemsSchema.optional().describe('Catalogue entries of this procedure alone'),
});

export type FrontMatter = z.output<typeof frontMatterSchema>;
export type States = z.output<typeof statesSchema>;
