import { z } from 'zod';

// The messages of all schemas say what is expected, so that they can stand after that word.

const idWords = 'an id: small letters and digits joined by hyphens, such as anvil-bolt';

/** Ids of machines, items, procedures and steps: small letters, digits, single hyphens; a letter first. */
export const idSchema = z.string(idWords).regex(/^[a-z][a-z0-9]*(-[a-z0-9]+)*$/, idWords);

/** One id or a list of them; always a list after parsing. */
export const idsSchema = z
  .union([idSchema, z.array(idSchema).min(1)], 'an id such as anvil-bolt, or a list of ids')
  .transform((ids): string[] => (typeof ids === 'string' ? [ids] : ids));

/** A name that may look like a number in YAML: property class `8.8`, part number `40-117`, revision `3`. */
export const labelSchema = z
  .union([z.string().min(1), z.number()], 'text or a number')
  .transform(String);

/** How many pieces. */
export const countSchema = z.int('a whole number from 1').min(1, 'a whole number from 1');

/** A condition over the manual's variants, such as `feed = hydraulic & engine != petrol`. */
export const whenSchema = z
  .string('a condition, such as feed = hydraulic')
  .min(1, 'a condition, such as feed = hydraulic')
  .describe('Which variants: feed = hydraulic & engine != petrol');

const quantityWords = 'a value with its unit, such as 22 N·m, 38 L or 1.0..1.5 mm';

/** A value with its unit, such as `22 N·m` or `1.0..1.5 mm`; read by the quantity room. */
export const quantityTextSchema = z
  .string(quantityWords)
  .min(1, quantityWords)
  .describe('A value with its unit: 22 N·m, 38 L, 1.0..1.5 mm');

/** A day of the calendar as ISO 8601 writes it; such texts sort by date. */
export const dateSchema = z.iso.date('a date that the calendar has, such as 2027-03-31');
