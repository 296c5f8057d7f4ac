import { z } from 'zod';

/** A point in a file. `line` and `column` count from 1, `offset` from 0, in UTF-16 code units (as LSP does). */
export const pointSchema = z.strictObject({
  line: z.int().min(1),
  column: z.int().min(1),
  offset: z.int().min(0),
});

/** A stretch of a file, `end` exclusive. `file` is relative to the manual's folder, with `/`. */
export const placeSchema = z.strictObject({
  file: z.string(),
  start: pointSchema,
  end: pointSchema,
});

export const levelSchema = z.enum(['error', 'warning', 'note']);

/** A second place that explains the finding, with a few words that say what is there. */
export const relatedSchema = z.strictObject({ ...placeSchema.shape, label: z.string() });

/** Replace the text between two offsets of a file. */
export const editSchema = z.strictObject({
  file: z.string(),
  start: z.int().min(0),
  end: z.int().min(0),
  text: z.string(),
});

/** A `fix` cannot change the meaning of the manual; a `suggestion` may, and waits for the writer's yes. */
export const fixSchema = z.strictObject({
  kind: z.enum(['fix', 'suggestion']),
  title: z.string(),
  edits: z.array(editSchema).min(1),
});

export const findingSchema = z.strictObject({
  rule: z.string().describe('Id of the rule, as `explain` takes it'),
  level: levelSchema,
  message: z.string(),
  ...placeSchema.shape,
  procedure: z.string().optional().describe('Id of the procedure in which it was found'),
  item: z.string().optional().describe('Id of the catalogue entry that it is about'),
  when: z.string().optional().describe('The variants for which it holds; all of them when absent'),
  data: z.record(z.string(), z.json()).describe('The facts behind the words'),
  related: z.array(relatedSchema),
  help: z.string().optional(),
  fix: fixSchema.optional(),
  known: z
    .boolean()
    .optional()
    .describe('Whether the baseline lists it; absent in a check without a baseline'),
});

export type Point = z.infer<typeof pointSchema>;
export type Place = z.infer<typeof placeSchema>;
export type Level = z.infer<typeof levelSchema>;
export type Related = z.infer<typeof relatedSchema>;
export type Edit = z.infer<typeof editSchema>;
export type Fix = z.infer<typeof fixSchema>;
export type Finding = z.infer<typeof findingSchema>;
export type Json = z.infer<ReturnType<typeof z.json>>;
