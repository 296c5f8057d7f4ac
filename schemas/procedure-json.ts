import { z } from 'zod';
import { contentSchema } from './procedure-content.ts';
import { caseSchema, itemSchema, procedureLinkSchema } from './procedure-parts.ts';
import { ucumQuantitySchema } from './ucum-quantity.ts';

const stateSchema = itemSchema.extend({
  state: z
    .union([z.string(), z.record(z.string(), z.int().min(0))])
    .describe('drained; of several pieces, how many are in which state'),
});

/**
 * `procedure.json` beside each sheet: the procedure for programs. What `::reverse` stands for is written out as
 * steps. Tools, parts and fluids to fetch are in `pull-list.json` beside it.
 */
export const procedureJsonSchema = z.strictObject({
  manual: z.strictObject({ title: z.string(), edition: z.string().optional() }),
  draft: z.literal(true).optional().describe('Not for work'),
  id: z.string(),
  title: z.string(),
  document: z.string().describe('Number by which the sheet is filed'),
  revision: z.string().optional(),
  system: z.string().describe('Heading under which the contents list it'),
  machine: itemSchema.optional(),
  when: caseSchema.optional(),
  summary: z.string().optional(),
  interval: z.string().optional(),
  people: z.int().min(1).describe('The most that are needed at once'),
  times: z
    .array(
      z.strictObject({
        elapsed: ucumQuantitySchema.describe('From start to end, waits used where they may be'),
        work: ucumQuantitySchema,
        waits: ucumQuantitySchema,
        atLeast: z.literal(true).optional().describe('Some of the work has no time'),
        machines: z.string().optional().describe('In words; absent for all'),
      }),
    )
    .describe('One for each kind of machine that takes longer or shorter'),
  starts: z.array(stateSchema).describe('What must not be in its home state before it'),
  leaves: z.array(stateSchema).describe('What is not in its home state after it'),
  sections: z.array(
    z.strictObject({
      id: z.string(),
      title: z.string().optional().describe('Absent for text before the first heading'),
      depth: z.int().min(1),
      content: z.array(contentSchema),
    }),
  ),
  performs: z.array(procedureLinkSchema),
  followOn: z.array(procedureLinkSchema).describe('To be done next'),
  history: z.array(z.strictObject({ revision: z.string(), date: z.string(), change: z.string() })),
  sheet: z.string().describe('The page, from this file'),
  pullList: z.string().describe('What must be handed out before the job, from this file'),
});

export type ProcedureJson = z.infer<typeof procedureJsonSchema>;
