import { z } from 'zod';

const amountSchema = z.strictObject({
  value: z.number(),
  unit: z.string().describe('UCUM code: L, g, [gal_us]'),
});

const pullLineSchema = z.strictObject({
  kind: z.enum(['tool', 'aid', 'part', 'fastener', 'consumable', 'fluid']),
  item: z.string().describe('Id of the entry in the catalogue'),
  of: z
    .strictObject({ kind: z.enum(['machine', 'procedure']), id: z.string() })
    .describe('Whose entry it is'),
  name: z.string().describe('In the singular'),
  goesWith: z
    .string()
    .optional()
    .describe('Name of the entry, where this is a washer of its stack or a fluid of its mix'),
  partNumber: z.string().optional(),
  specification: z
    .string()
    .optional()
    .describe('Thread and class of a fastener, size of a tool, specification of a fluid'),
  note: z.string().optional(),
  count: z.int().min(1).optional().describe('Pieces; absent for what is taken as needed'),
  quantity: amountSchema.optional(),
  upTo: z.literal(true).optional().describe('Count or quantity is the most of many cases'),
  containers: z
    .array(z.strictObject({ count: z.int().min(1), size: amountSchema }))
    .optional()
    .describe('Together they hold the quantity; largest first'),
  when: z
    .strictObject({
      condition: z.string().optional().describe('In the language of the manual'),
      words: z.string().describe('for infeed winch, if the rope is cut'),
    })
    .optional()
    .describe('Absent where it is needed in any case'),
  procedures: z.array(z.string()).describe('Ids of those of the list that need it'),
});

/**
 * What `pull --format json` prints, and `pull-list.json` beside each sheet. Of the lines of one thing at
 * most one holds for any machine and finding.
 */
export const pullListSchema = z.strictObject({
  manual: z.strictObject({ title: z.string(), edition: z.string().optional() }),
  for: z.string().optional().describe('The machines that were asked for; absent for all'),
  procedures: z.array(
    z.strictObject({
      id: z.string(),
      title: z.string(),
      document: z.string(),
      revision: z.string().optional(),
    }),
  ),
  lines: z
    .array(pullLineSchema)
    .describe('Tools and aids, parts and fasteners, consumables, fluids; each by name'),
});

export type PullListData = z.infer<typeof pullListSchema>;
