import { z } from 'zod';
import { findingSchema, levelSchema, placeSchema } from './finding.ts';

const keys = z.array(z.string());

/** A finding of one part, and what of the rest of the manual decides whether it stands. */
const foundSchema = z.strictObject({
  finding: findingSchema,
  fact: z.string().optional().describe('Of the fact that it tells'),
  unless: keys.optional().describe('It falls where any part settles one of these'),
  onlyIf: z.string().optional().describe('It falls where no part settles this'),
});

const performingSchema = z.strictObject({
  key: z.string().describe('Of the fact that holds for the procedure that performs the text'),
  by: z.strictObject({
    procedure: z.string(),
    place: placeSchema,
    when: z.string().optional(),
  }),
});

const standingSchema = z.strictObject({
  procedure: z.string(),
  machineFile: z.string(),
  rule: z.string(),
  item: z.string().optional(),
  until: z.strictObject({ text: z.string(), place: placeSchema }).optional(),
  reason: z.string(),
  scope: placeSchema,
  place: placeSchema,
  holds: z.boolean(),
  ifUnused: z.strictObject({
    isOff: z.boolean(),
    isKnown: z.boolean(),
    near: z.string().optional(),
  }),
});

const lookSchema = z.strictObject({
  found: z.array(foundSchema),
  settled: keys.describe('What the part settles for findings of any part'),
  performing: z.array(performingSchema),
  waivers: z.array(standingSchema),
  size: z.strictObject({
    procedures: z.int().min(0),
    steps: z.int().min(0),
    actions: z.int().min(0),
  }),
});

/** More shares than anyone has machines. */
export const mostShares = 10_000;

/** What `inspect --share` prints, for `merge`. */
export const shareReportSchema = z.strictObject({
  tool: z.strictObject({ name: z.literal('tallybolt'), version: z.string() }),
  share: z.strictObject({ number: z.int().min(1), of: z.int().min(1).max(mostShares) }),
  manual: z.strictObject({
    title: z.string(),
    digest: z.string().describe('Of all files of the manual: shares of one state have the same'),
    levels: z.record(z.string(), z.enum([...levelSchema.options, 'off'])),
    folder: z.string().describe('Leads from where it was checked to the manual'),
  }),
  parts: z.array(
    z.strictObject({
      path: z.string(),
      missing: z.literal(true).optional().describe('There is no such text, and that is told'),
      procedure: z.strictObject({ id: z.string(), title: z.string() }).optional(),
      look: lookSchema,
    }),
  ),
  texts: z
    .array(z.strictObject({ path: z.string(), text: z.string() }))
    .describe('The files that the findings show'),
});

export type ShareReport = z.infer<typeof shareReportSchema>;
