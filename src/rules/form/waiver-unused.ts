import { nearest } from '../../source/index.ts';
import type { Draft, Examined, Rule } from '../rule.ts';
import type { WaiverFact } from '../waiving/facts.ts';
import { code } from '../wording/lists.ts';

type Unused = Extract<WaiverFact, { kind: 'waiver-unused' }>;

export const rule: Rule = {
  id: 'waiver-unused',
  family: 'form',
  level: 'warning',
  *check(examined): Generator<Draft> {
    for (const fact of examined.facts('waiver-unused')) {
      const { place, procedure, rule, item } = fact;
      yield {
        place,
        procedure,
        item,
        message: `${reason(examined, fact)}, so this waiver lets nothing pass`,
        data: { rule, ...(item !== undefined && { item }) },
        help: help(examined, fact),
      };
    }
  },
};

function reason(examined: Examined, fact: Unused): string {
  const { rule, item } = fact;
  if (isOff(examined, rule)) return `The rule ${code(rule)} is turned off in manual.yaml`;
  if (item === undefined) return `No finding of ${code(rule)} is left here`;
  if (!knownItems(examined, fact).includes(item)) return `There is no item ${code(item)}`;
  return `No finding of ${code(rule)} about ${code(item)} is left here`;
}

function help(examined: Examined, fact: Unused): string {
  const known = knownItems(examined, fact);
  if (fact.item !== undefined && !known.includes(fact.item)) {
    const near = nearest(fact.item, known);
    if (near !== undefined) return `Perhaps ${code(near)} is meant.`;
  }
  return 'Take the waiver out, or move it into the step or section of the finding that it is for.';
}

const isOff = ({ linked }: Examined, rule: string): boolean =>
  Object.hasOwn(linked.manual.settings.rules, rule) && linked.manual.settings.rules[rule] === 'off';

function knownItems({ linked }: Examined, { procedure }: Unused): readonly string[] {
  return [...(linked.procedures.get(procedure)?.catalogue.items.keys() ?? [])];
}
