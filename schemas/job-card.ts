import { z } from 'zod';

const timeSchema = z.iso
  .datetime({ offset: true })
  .describe('ISO 8601, local with offset: 2031-04-09T12:03:05+02:00');

const tickSchema = z.strictObject({
  done: timeSchema.optional().describe('When it was ticked; absent where it is not done'),
});

/** What a tablet writes of one job on one sheet. */
export const jobCardSchema = z.strictObject({
  manual: z.strictObject({ title: z.string(), draft: z.literal(true).optional() }),
  sheet: z.strictObject({
    id: z.string(),
    title: z.string(),
    document: z.string(),
    revision: z.string().optional().describe('Of the sheet from which this was written'),
  }),
  job: z.strictObject({
    name: z.string().describe('Work order, as typed; may be empty'),
    technician: z.string(),
    started: timeSchema,
    finished: timeSchema.optional(),
    revision: z.string().optional().describe('Of the sheet when the job began'),
    machine: z.string().optional().describe('The machine chosen on the sheet, in its words'),
    changedSince: z
      .array(z.string())
      .optional()
      .describe('Steps of the revision with which the job began whose marks were dropped'),
  }),
  written: timeSchema,
  steps: z
    .array(
      z.strictObject({
        step: z.string().describe('Number as the sheet showed it'),
        ...tickSchema.shape,
        places: z
          .array(z.strictObject({ place: z.string(), ...tickSchema.shape }))
          .optional()
          .describe('Left, right and the like, each with a tick of its own'),
      }),
    )
    .describe('In the order of the sheet; those for other machines left out'),
  readings: z.array(
    z.strictObject({
      step: z.string().optional(),
      what: z.string(),
      value: z.string().optional().describe('As typed; absent where nothing was written'),
      at: timeSchema.optional(),
      low: z.number().optional(),
      high: z.number().optional(),
      unit: z.string().optional(),
      verdict: z
        .enum(['within', 'below', 'above', 'unclear', 'empty', 'no-limits'])
        .describe('unclear: not a plain number; no-limits: the sheet gives none'),
    }),
  ),
});

export type JobCard = z.infer<typeof jobCardSchema>;
