import { z } from 'zod';
import { findingSchema, placeSchema } from './finding.ts';

/** Most dangerous first. `src/redline/risks.ts` says why each is one. */
export const riskSchema = z.enum([
  'protection',
  'put-back',
  'joint',
  'fluid',
  'proof',
  'order',
  'work',
  'record',
  'unit',
  'words',
]);

/** What can change in a manual. */
export const changeKindSchema = z.enum([
  'torque',
  'torque-stages',
  'torque-angle',
  'torque-tolerance',
  'torque-lubrication',
  'count',
  'fluid',
  'mix',
  'capacity',
  'limit',
  'mass',
  'unit',
  'hazard',
  'hazard-signal',
  'hazard-words',
  'entry',
  'entry-id',
  'entry-field',
  'machines',
  'setting',
  'default-torque',
  'variant',
  'rule-level',
  'procedure',
  'procedure-id',
  'procedure-file',
  'procedure-field',
  'contract',
  'step',
  'step-moved',
  'step-way',
  'needs',
  'people',
  'time',
  'tool',
  'action',
  'quantity',
  'value',
  'detail',
  'perform',
  'reverse',
  'record-box',
  'figure',
  'waiver',
  'words',
]);

export const directionSchema = z.enum(['lower', 'higher', 'wider', 'narrower', 'earlier', 'later']);

/** One of the steps of a sheet, or the text beside the steps of one of its sections. */
const stepSchema = z.strictObject({
  id: z.string().optional().describe('The id that the writer gave it'),
  before: z.string().optional().describe('Its number before'),
  after: z.string().optional().describe('Its number after'),
  section: z.string().optional().describe('Heading that it stands under'),
});

export const changeSchema = z.strictObject({
  kind: changeKindSchema,
  risk: riskSchema,
  message: z.string(),
  machine: z.string().optional().describe('Id of the machine whose catalogue it is in'),
  procedure: z.string().optional().describe('Id of the procedure after; before, where it is gone'),
  item: z.string().optional().describe('Id of the catalogue entry'),
  name: z.string().optional().describe('What a sheet calls that entry'),
  step: stepSchema.optional(),
  verb: z.string().optional().describe('Of an action: remove'),
  field: z.string().optional().describe('Which member, limit, setting or rule'),
  before: z.string().optional().describe('As it was; absent where it is new'),
  after: z.string().optional().describe('As it is; absent where it is gone'),
  direction: directionSchema.optional(),
  places: z.strictObject({ before: placeSchema.optional(), after: placeSchema.optional() }),
  touches: z
    .array(
      z.strictObject({
        procedure: z.string(),
        through: z
          .array(z.string())
          .describe('The procedures of its own text that lead to it, performed; empty if its own'),
      }),
    )
    .describe('Procedures that a change outside of them reaches, in order of id'),
});

const sideSchema = z.strictObject({
  revision: z.string().optional().describe('As it was asked for; absent for the working folder'),
  commit: z.string().optional(),
  date: z.string().optional().describe('Of the commit, YYYY-MM-DD'),
});

/** What `redline --format json` prints. */
export const redlineSchema = z.strictObject({
  tool: z.strictObject({ name: z.literal('tallybolt'), version: z.string() }),
  manual: z.strictObject({ title: z.string(), edition: z.string().optional() }),
  before: sideSchema,
  after: sideSchema,
  changes: z.array(changeSchema).describe('Most dangerous first'),
  procedures: z
    .array(
      z.strictObject({
        id: z.string(),
        title: z.string(),
        revision: z.strictObject({
          before: z.string().optional(),
          after: z.string().optional(),
        }),
        changes: z.int().min(0).describe('In its own text'),
        performedBy: z.array(z.string()).describe('Directly or through others'),
      }),
    )
    .describe('Those whose own text changed, in order of id'),
  findings: z.strictObject({ new: z.array(findingSchema), gone: z.array(findingSchema) }),
  summary: z.record(riskSchema, z.int().min(0)),
});

export type Risk = z.infer<typeof riskSchema>;
export type ChangeKind = z.infer<typeof changeKindSchema>;
export type Direction = z.infer<typeof directionSchema>;
export type StepAt = z.infer<typeof stepSchema>;
export type Change = z.infer<typeof changeSchema>;
export type Side = z.infer<typeof sideSchema>;
export type Redline = z.infer<typeof redlineSchema>;
