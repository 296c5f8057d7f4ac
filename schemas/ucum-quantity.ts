import { z } from 'zod';

const number = z.number();
const unit = z.string().describe('UCUM code: N.m, L, [psi]');

const measureSchema = z.discriminatedUnion('form', [
  z.strictObject({ form: z.literal('single'), value: number, unit }),
  z.strictObject({ form: z.literal('tolerance'), value: number, low: number, high: number, unit }),
  z.strictObject({ form: z.literal('range'), low: number, high: number, unit }),
  z.strictObject({ form: z.literal('min'), low: number, unit }),
  z.strictObject({ form: z.literal('max'), high: number, unit }),
]);

/** A value for programs: plain numbers in the writer's unit, bounds worked out, the unit as a UCUM code. */
export const ucumQuantitySchema = z.discriminatedUnion('form', [
  ...measureSchema.options,
  z
    .strictObject({
      form: z.literal('torque-angle'),
      torque: measureSchema,
      angle: measureSchema,
    })
    .describe('To the torque, then on by the angle'),
]);
