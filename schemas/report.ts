import { z } from 'zod';
import { findingSchema } from './finding.ts';

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
  summary: z.strictObject({
    error: z.int().min(0),
    warning: z.int().min(0),
    note: z.int().min(0),
    waived: z.int().min(0),
  }),
});

export type Report = z.infer<typeof reportSchema>;
