import { z } from 'zod';

const printWords = 'the print of a finding: 32 digits from 0 to 9 and a to f';
const countWords = 'a whole number from 1';

/** A finding of an earlier check, or several that are alike. It is known again by its print alone. */
export const knownFindingSchema = z.strictObject({
  rule: z.string('the id of a rule').describe('Id of the rule'),
  procedure: z.string('the id of a procedure').optional(),
  file: z.string('a path').optional().describe('Where it was found, if not in a procedure'),
  item: z.string('the id of an item').optional(),
  when: z.string('a condition').optional(),
  says: z.string('the words of the finding').describe('Its words, for readers'),
  print: z
    .string(printWords)
    .regex(/^[0-9a-f]{32}$/, printWords)
    .describe('Made of rule, procedure, item, variants and facts; of no line number'),
  count: z.int(countWords).min(1, countWords).describe('How many findings are alike'),
});

/** The number in a baseline that says how it is written. */
export const baselineFormat = 1;

/** What `inspect --write-baseline` writes and `--baseline` reads: findings that an old manual is known to have. */
export const baselineSchema = z.strictObject({
  baseline: z.literal(baselineFormat, `${baselineFormat}`).describe('How this file is written'),
  known: z
    .array(knownFindingSchema, 'a list of findings')
    .describe('Sorted by procedure or file, rule, item, words'),
});

export type KnownFinding = z.infer<typeof knownFindingSchema>;
export type Baseline = z.infer<typeof baselineSchema>;
