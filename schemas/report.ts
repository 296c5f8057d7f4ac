import { z } from 'zod';
import { knownFindingSchema } from './baseline.ts';
import { findingSchema, placeSchema } from './finding.ts';

/** Findings that the manual lets pass, and why; none where the waiver does not hold or meets nothing. */
export const waiverSchema = z.strictObject({
  rule: z.string(),
  item: z.string().optional(),
  until: z.string().optional().describe('The last day on which it holds, YYYY-MM-DD'),
  reason: z.string(),
  ...placeSchema.shape,
  procedure: z.string().describe('Id of the procedure in which it stands'),
  waived: z.array(findingSchema),
});

/** What `inspect --format json` prints. */
export const reportSchema = z.strictObject({
  tool: z.strictObject({ name: z.literal('tallybolt'), version: z.string() }),
  manual: z.strictObject({
    title: z.string(),
    procedures: z.int().min(0),
    steps: z.int().min(0),
    actions: z.int().min(0),
  }),
  findings: z.array(findingSchema).describe('Sorted by file, then place, then rule'),
  waivers: z.array(waiverSchema).describe('Sorted by file, then place'),
  summary: z.strictObject({
    error: z.int().min(0),
    warning: z.int().min(0),
    note: z.int().min(0),
    waived: z.int().min(0).describe('Findings that waivers let pass'),
  }),
  baseline: z
    .strictObject({
      new: z.int().min(0).describe('Findings that it does not list'),
      known: z.int().min(0).describe('Findings that it lists'),
      listed: z.int().min(0).describe('All that it lists, of the rules that were asked for'),
      gone: z
        .array(knownFindingSchema)
        .describe('What it lists and is no longer found; `count` is how many of it are gone'),
    })
    .optional()
    .describe('How the findings stand to a baseline; absent in a check without one'),
});

export type Report = z.infer<typeof reportSchema>;
export type Waived = z.infer<typeof waiverSchema>;
