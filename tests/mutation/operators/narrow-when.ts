import { resolveCondition, type Space, type VariantSet } from '../../../src/applicability/index.ts';
import { isStateful } from '../../../src/ledger/precedence.ts';
import { programOf } from '../../../src/ledger/program.ts';
import type { Operator, Subject } from '../operator.ts';
import { sourceWords } from '../source-words.ts';

/**
 * Has an action or a perform done for one value of a variant only, where it was done for others too. One
 * variant each, the next one for the next place.
 */
export const narrowWhen: Operator = {
  name: 'narrow one side to a variant',
  *mutations(subject) {
    const { manual, linked } = subject;
    const { space } = manual.manual;
    const { procedure } = linked;
    const program = programOf(linked, procedure.sections, space, space.all);
    for (const [i, op] of program.entries()) {
      if (op.type !== 'act' && op.type !== 'perform') continue;
      if ((op.type === 'act' ? op.action : op.perform).when !== undefined) continue;
      const about = aboutOf(subject, op);
      if (about === undefined) continue;
      const done = space.and(op.under, presenceOf(subject, op));
      const from = i % Math.max(1, space.attributes.length);
      const turned = [...space.attributes.slice(from), ...space.attributes.slice(0, from)];
      const [narrow] = turned.flatMap(({ id, values }) =>
        values
          .map((value) => ({ when: `when="${id} = ${value}"`, set: space.is(id, value) }))
          .filter(({ set }) => isProperPart(space, done, set)),
      );
      if (narrow === undefined) continue;
      const close = op.place.end.offset - 1;
      yield {
        edits: [{ start: close, end: close, text: ` ${narrow.when}` }],
        words: `${sourceWords(procedure, op.place)} → ${narrow.when}`,
        about,
      };
    }
  },
};

function isProperPart(space: Space, whole: VariantSet, set: VariantSet): boolean {
  const part = space.and(whole, set);
  return part !== whole && part !== space.none;
}

type Op = ReturnType<typeof programOf>[number];

function aboutOf({ linked }: Subject, op: Op) {
  if (op.type === 'perform') return { is: 'perform', procedure: op.perform.procedure.id } as const;
  if (op.type !== 'act') return undefined;
  const { action } = op;
  const item = linked.item(action.item);
  if (item === undefined || !isStateful(item)) return undefined;
  if (['check', 'measure', 'apply'].includes(action.verb)) return undefined;
  return { is: 'action', action, item } as const;
}

function presenceOf({ manual, linked }: Subject, op: Op) {
  const { space } = manual.manual;
  const item = op.type === 'act' ? linked.item(op.action.item) : undefined;
  return item?.when === undefined ? space.all : resolveCondition(space, item.when).value;
}
