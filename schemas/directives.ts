import { z } from 'zod';
import { signalSchema } from './catalogue.ts';
import { dateSchema, idSchema, quantityTextSchema, whenSchema } from './id.ts';

/** Directive attributes arrive as text; each schema says what may stand there. */
const ids = z
  .string()
  .transform((list) => list.split(/[\s,]+/).filter(Boolean))
  .pipe(z.array(idSchema).min(1, 'one id or more, such as "anvil-bolt, anvil"'));
const count = z
  .string()
  .regex(/^[1-9]\d{0,5}$/, 'a whole number from 1 to 999999')
  .transform(Number);
const flag = z.literal(['', 'yes'], 'the word alone or with =yes').transform((): true => true);
const text = z.string().min(1, 'text that is not empty');

export const verbSchema = z.enum([
  'remove',
  'install',
  'replace',
  'loosen',
  'tighten',
  'torque',
  'disconnect',
  'connect',
  'cap',
  'uncap',
  'set-aside',
  'return',
  'drain',
  'fill',
  'bleed',
  'relieve',
  'isolate',
  'restore',
  'fit',
  'withdraw',
  'set',
  'discard',
  'apply',
  'check',
  'measure',
]);
export type Verb = z.output<typeof verbSchema>;

/** Attributes of an action: `:remove[the bolts]{item=anvil-bolt qty=4}`. */
export const actionSchema = z.strictObject({
  item: idSchema,
  qty: count.optional().describe('How many; all that are left to do when absent'),
  when: whenSchema.optional(),
  new: flag.optional().describe('A new one goes in'),
  to: idSchema.optional().describe('Position of a control'),
  amount: quantityTextSchema.optional().describe('Fluid drained or filled, when not the whole'),
  value: quantityTextSchema
    .optional()
    .describe('A torque, a limit or a size; must agree with the catalogue'),
  limit: idSchema.optional().describe('Which limit of the catalogue a reading must keep'),
  each: ids.optional().describe('Instances of the item; all when absent'),
  with: ids.optional().describe('Tools or consumables used'),
  angle: quantityTextSchema
    .optional()
    .describe(
      'Of an extension on a torque wrench: 0° in line, 90° to the side; in line when absent',
    ),
});

export const stepSchema = z.strictObject({
  id: idSchema.optional(),
  needs: ids.optional(),
  when: whenSchema.optional(),
  at: idSchema
    .optional()
    .describe('Inside :::reverse: the item before whose return this step is done'),
  people: count.optional(),
  time: quantityTextSchema.optional().describe('How long somebody works at it'),
  wait: quantityTextSchema
    .optional()
    .describe('How long nobody is needed after it: draining, drying, cooling'),
  tools: ids.optional(),
  consumables: ids.optional(),
  changed: text.optional().describe('Revision in which the step last changed: a bar marks it'),
});

export const hazardBlockSchema = z.strictObject({
  hazard: text.optional(),
  harm: text.optional(),
  when: whenSchema.optional(),
});
export const hazardReferenceSchema = z.strictObject({ of: idSchema, when: whenSchema.optional() });
export const itemBlockSchema = z.strictObject({ item: idSchema, when: whenSchema.optional() });
export const needsSchema = z.strictObject({ step: ids });
/** `::waive` lets the findings of one rule pass, for a reason. */
export const waiveSchema = z.strictObject({
  rule: idSchema,
  item: idSchema.optional().describe('Only findings about this item'),
  until: dateSchema.optional().describe('The last day on which it holds'),
});
/** `:::when`, `:::if`, `:::either` and `:::or` have their words in square brackets and no attributes. */
export const labelledSchema = z.strictObject({});
export const figureSchema = z.strictObject({
  src: text,
  alt: text.optional(),
  id: idSchema.optional(),
});
const percentages =
  'percentages of the picture from its left and its top edge, such as "62,40"; several with spaces between them';
const points = z
  .string()
  .regex(/^\s*\d+(\.\d+)?\s*,\s*\d+(\.\d+)?(\s+\d+(\.\d+)?\s*,\s*\d+(\.\d+)?)*\s*$/, percentages)
  .transform((list) =>
    [...list.matchAll(/([\d.]+)\s*,\s*([\d.]+)/g)].map(([, x, y]) => ({
      x: Number(x),
      y: Number(y),
    })),
  )
  .refine((all) => all.every(({ x, y }) => x <= 100 && y <= 100), percentages);
/** `::callout` in a figure; the numbers follow the order of the lines. */
export const calloutSchema = z.strictObject({
  at: points.describe(
    'Where it points: percent from the left, from the top; several points in one',
  ),
  item: idSchema
    .optional()
    .describe('The entry that it shows; words in brackets where there is none'),
});
export const performSchema = z.strictObject({
  procedure: idSchema,
  part: idSchema.optional().describe('Id of one section of it'),
  each: idSchema
    .optional()
    .describe('Instance at which that is done which its text does at another one: right'),
  'in-place': flag
    .optional()
    .describe('Its steps are printed here; a reference to its sheet when absent'),
  when: whenSchema.optional(),
});
export const reverseSchema = z.strictObject({
  of: idSchema,
  except: ids.optional(),
  when: whenSchema.optional(),
});

export const signals = signalSchema.options;
