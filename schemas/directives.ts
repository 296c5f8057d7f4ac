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
  each: ids.optional().describe('Instances of the item; all when absent'),
  with: ids.optional().describe('Tools or consumables used'),
});

export const stepSchema = z.strictObject({
  id: idSchema.optional(),
  needs: ids.optional(),
  when: whenSchema.optional(),
  at: idSchema
    .optional()
    .describe('Inside :::reverse: the item before whose return this step is done'),
  people: count.optional(),
  time: quantityTextSchema.optional(),
  tools: ids.optional(),
  consumables: ids.optional(),
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
export const performSchema = z.strictObject({
  procedure: idSchema,
  part: idSchema.optional().describe('Id of one section of it'),
  when: whenSchema.optional(),
});
export const reverseSchema = z.strictObject({
  of: idSchema,
  except: ids.optional(),
  when: whenSchema.optional(),
});

export const signals = signalSchema.options;
