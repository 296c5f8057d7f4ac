import { z } from 'zod';
import { defaultSafety } from './default-safety.ts';
import { idSchema, labelSchema, quantityTextSchema, whenSchema } from './id.ts';

const text = z.string().min(1);

const variantSchema = z.union(
  [z.array(text).min(2), z.strictObject({ name: text.optional(), values: z.array(text).min(2) })],
  'a list of at least 2 values, or keys name and values',
);

const unitPairSchema = z.union(
  [text, z.array(text).min(1).max(2)],
  'a unit such as N·m, or a first and a second one: [N·m, lbf·ft]',
);

/** `manual.yaml`. */
export const manualSchema = z.strictObject({
  title: text.describe('Title of the manual, printed on every sheet'),
  'document-prefix': text.optional().describe('Start of every document number, such as WM-410'),
  edition: labelSchema.optional(),
  issued: text.optional().describe('Date of issue, as it is to be printed'),
  publisher: text.optional(),
  address: z
    .url()
    .optional()
    .describe('Where the published manual can be read; printed as a QR code'),
  language: z
    .string()
    .regex(/^[a-z]{2}(-[A-Z]{2})?$/, 'a language tag such as en or en-GB')
    .default('en'),
  systems: z
    .array(text)
    .default([])
    .describe('Headings of the contents page in their order; others follow by name'),
  units: z
    .record(z.string(), unitPairSchema)
    .default({})
    .describe('First and second unit by kind of quantity: torque: [N·m, lbf·ft]'),
  variants: z.record(idSchema, variantSchema).default({}),
  never: z.array(whenSchema).default([]).describe('Conditions that no machine meets'),
  rules: z.record(idSchema, z.enum(['error', 'warning', 'note', 'off'])).default({}),
  'default-torques': z
    .array(
      z.strictObject({
        thread: text,
        class: labelSchema.optional(),
        grade: labelSchema.optional(),
        torque: quantityTextSchema,
      }),
    )
    .default([])
    .describe('Torques by thread and class for fasteners that have none of their own'),
  'lift-limit': quantityTextSchema
    .optional()
    .describe('Mass that one person may lift by the rules of the workplace; unchecked without it'),
  safety: text
    .default(defaultSafety)
    .describe('Standing safety text for every sheet, in Markdown; the usual cautions when absent'),
});

export type ManualSettings = z.output<typeof manualSchema>;
