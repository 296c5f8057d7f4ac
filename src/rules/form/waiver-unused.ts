import type { Draft, LateRule } from '../rule.ts';
import type { WaiverFact } from '../waiving/facts.ts';
import { code } from '../wording/lists.ts';

type Unused = Extract<WaiverFact, { kind: 'waiver-unused' }>;

export const rule: LateRule = {
  id: 'waiver-unused',
  family: 'form',
  level: 'warning',
  *check(told): Generator<Draft> {
    for (const fact of told.facts('waiver-unused')) {
      const { place, procedure, rule, item } = fact;
      yield {
        place,
        procedure,
        item,
        message: `${reason(fact)}, so this waiver lets nothing pass`,
        data: { rule, ...(item !== undefined && { item }) },
        help: help(fact),
      };
    }
  },
};

function reason({ rule, item, isOff, isKnown }: Unused): string {
  if (isOff) return `The rule ${code(rule)} is turned off in manual.yaml`;
  if (item === undefined) return `No finding of ${code(rule)} is left here`;
  if (!isKnown) return `There is no item ${code(item)}`;
  return `No finding of ${code(rule)} about ${code(item)} is left here`;
}

const help = ({ near }: Unused): string =>
  near === undefined
    ? 'Take the waiver out, or move it into the step or section of the finding that it is for.'
    : `Perhaps ${code(near)} is meant.`;
