import { z } from 'zod';
import { verbSchema } from './directives.ts';
import { editSchema, placeSchema } from './finding.ts';

const candidateSchema = z.strictObject({ id: z.string(), name: z.string() });

/** Words that act without a directive, and the directive that would count them. */
export const proposalSchema = z.strictObject({
  ...placeSchema.shape,
  procedure: z.string(),
  words: z.string(),
  verb: verbSchema,
  directive: z.string().describe('As it is to be written; … stands for what the words leave open'),
  candidates: z
    .array(candidateSchema)
    .describe('Entries that the words may mean: one where it is clear'),
  why: z
    .enum([
      'still-in',
      'several-fit',
      'none-fits',
      'spelled-alike',
      'beside-the-work',
      'signs',
      'position',
      'pronoun',
    ])
    .optional()
    .describe('Why it is not written by itself; absent where it is'),
  edit: editSchema.optional(),
});

/** An entry that the catalogue lacks. */
export const newEntrySchema = z.strictObject({
  file: z.string(),
  procedure: z.string(),
  section: z.string().describe('Where in the catalogue: fasteners, parts'),
  id: z.string(),
  entry: z.string().describe('Its line of YAML; … stands for what the words leave open'),
  isWhole: z.boolean().describe('False where it is for the writer to fill in and add'),
});

/** What `inspect --untracked --format json` prints. */
export const untrackedSchema = z.strictObject({
  proposals: z.array(proposalSchema),
  entries: z.array(newEntrySchema),
  additions: z.array(editSchema).describe('What writes those entries that are whole'),
});

export type Proposal = z.infer<typeof proposalSchema>;
export type NewEntry = z.infer<typeof newEntrySchema>;
export type UntrackedReport = z.infer<typeof untrackedSchema>;
