import { z } from 'zod';
import {
  type ActionData,
  actionDataSchema,
  type CaseData,
  caseSchema,
  countedItemSchema,
  fluidDataSchema,
  type HazardData,
  hazardDataSchema,
  itemSchema,
  procedureLinkSchema,
  torqueDataSchema,
  type ValueData,
  valueDataSchema,
} from './procedure-parts.ts';

const when = caseSchema.optional();
const number = z.string().optional().describe('Where it stands outside the steps');

const textSchema = z.strictObject({
  type: z.literal('text'),
  words: z.string(),
  actions: z.array(actionDataSchema),
});

const performSchema = z
  .strictObject({
    type: z.literal('perform'),
    number,
    procedure: procedureLinkSchema,
    part: z.string().optional().describe('Id of its section; absent for the whole'),
    at: z.string().optional().describe('The instance at which it is done'),
    inPlace: z.literal(true).optional().describe('The sheet prints its steps here'),
    when,
  })
  .describe('A job of another procedure, done here');

const undoSchema = z
  .strictObject({
    type: z.literal('undo'),
    number,
    section: z.string(),
    except: z.array(z.string()).describe('Ids of items'),
    when,
  })
  .describe('A section whose undoing could not be written out as steps');

const figureSchema = z.strictObject({
  type: z.literal('figure'),
  file: z.string().optional().describe('From the folder of the published manual'),
  alternative: z.string(),
  words: z.string(),
  callouts: z.array(
    z.strictObject({
      number: z.int().min(1),
      item: itemSchema.optional(),
      words: z.string().optional(),
    }),
  ),
});

const torqueSchema = z.strictObject({
  type: z.literal('torque'),
  item: itemSchema,
  torque: torqueDataSchema,
  words: z.string(),
  when,
});

const fluidSchema = z.strictObject({
  type: z.literal('fluid'),
  item: itemSchema,
  fluid: fluidDataSchema,
  words: z.string(),
  when,
});

export type ContentData =
  | StepData
  | z.infer<typeof textSchema>
  | ({ readonly type: 'hazard' } & HazardData)
  | z.infer<typeof performSchema>
  | z.infer<typeof undoSchema>
  | z.infer<typeof figureSchema>
  | z.infer<typeof torqueSchema>
  | z.infer<typeof fluidSchema>
  | { type: 'only'; when: CaseData; content: ContentData[] }
  | { type: 'repeat'; words: string; content: ContentData[] }
  | { type: 'needs'; steps: string[]; content: ContentData[] }
  | { type: 'choice'; optional: boolean; ways: { if: string; content: ContentData[] }[] };

export interface StepData {
  type: 'step';
  number: string;
  id?: string | undefined;
  words: string;
  hazards: HazardData[];
  actions: ActionData[];
  people?: number | undefined;
  time?: ValueData | undefined;
  wait?: ValueData | undefined;
  needs?: string[] | undefined;
  tools?: z.infer<typeof countedItemSchema>[] | undefined;
  consumables?: z.infer<typeof countedItemSchema>[] | undefined;
  when?: CaseData | undefined;
  content: ContentData[];
}

const content = z.array(z.lazy((): z.ZodType<ContentData> => contentSchema));

const stepDataSchema = z.strictObject({
  type: z.literal('step'),
  number: z.string().describe('7, or 3.1 for a step inside step 3'),
  id: z.string().optional(),
  words: z.string().describe('Its own text'),
  hazards: z.array(hazardDataSchema).describe('Told before the step'),
  actions: z.array(actionDataSchema).describe('Those of its own text, in order of reading'),
  people: z.int().min(2).optional().describe('Absent where one is enough'),
  time: valueDataSchema.optional(),
  wait: valueDataSchema.optional().describe('After its work; nobody is needed'),
  needs: z.array(z.string()).optional().describe('Ids of steps that come first'),
  tools: z.array(countedItemSchema).optional(),
  consumables: z.array(countedItemSchema).optional(),
  when,
  content: content.describe('What is in the step beside its own text'),
});

/** What a section, a step, or a way through one is made of, in order of reading. */
export const contentSchema: z.ZodType<ContentData> = z
  .discriminatedUnion('type', [
    stepDataSchema,
    textSchema,
    hazardDataSchema.extend({ type: z.literal('hazard') }),
    performSchema,
    undoSchema,
    figureSchema,
    torqueSchema,
    fluidSchema,
    z.strictObject({ type: z.literal('only'), when: caseSchema, content }),
    z.strictObject({
      type: z.literal('repeat'),
      words: z.string().describe('until no more bubbles come'),
      content,
    }),
    z.strictObject({ type: z.literal('needs'), steps: z.array(z.string()), content }),
    z.strictObject({
      type: z.literal('choice'),
      optional: z.boolean().describe('True where none of the ways may be taken'),
      ways: z.array(z.strictObject({ if: z.string(), content })),
    }),
  ])
  .meta({ id: 'content' });
