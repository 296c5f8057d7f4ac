import { mayHave } from '../../catalogue/index.ts';
import { nearest } from '../../source/index.ts';
import type { Draft, Examined, Rule } from '../rule.ts';
import { replaceWord } from '../telling/replace-word.ts';
import { unknownReferences } from '../telling/unknown-reference.ts';
import { code } from '../wording/lists.ts';

const add = (id: string): string =>
  `Correct the id, or add ${code(id)} to the catalogue, with its name.`;

export const rule: Rule = {
  id: 'unknown-item',
  family: 'links',
  level: 'error',
  *check(examined): Generator<Draft> {
    const lost = withoutMachine(examined);
    yield* unknownReferences(
      examined,
      ['item'],
      ({ id, owner }) => `${code(id)} is not in the catalogue${ofMachine(owner)}`,
      ({ id }) => add(id),
      ({ procedure }) => !lost.has(procedure),
    );
    yield* inContracts(examined, lost);
    for (const { place, id, near, machine } of examined.facts('unknown-item')) {
      yield {
        place,
        message: `${code(id)} is not in the catalogue${ofMachine(machine)}`,
        data: { id, machine, ...(near !== undefined && { near }) },
        help: near === undefined ? add(id) : `Perhaps ${code(near)} is meant.`,
        fix: replaceWord(examined, place, 'suggestion', id, near),
      };
    }
  },
};

/** Procedures whose machine is not known, or not said: that is told, and not every entry that they name. */
function withoutMachine(examined: Examined): ReadonlySet<string> {
  const unknown = examined.facts('unknown-reference').filter(({ what }) => what === 'machine');
  return new Set(
    [...unknown, ...examined.facts('machine-unsaid')].map(({ procedure }) => procedure),
  );
}

/** What `starts` and `leaves` name. */
function* inContracts(examined: Examined, lost: ReadonlySet<string>): Generator<Draft> {
  for (const { procedure, item: id, member } of examined.facts('contract-unfit')) {
    const one = examined.linked.procedures.get(procedure);
    if (one === undefined || one.item(id) !== undefined || lost.has(procedure)) continue;
    const { catalogue } = one;
    if (mayHave(catalogue, id)) continue;
    const near = nearest(id, catalogue.items.keys());
    const place = one.procedure.yaml.keyPlaceOf(`${member}.${id}`);
    yield {
      place,
      procedure,
      message: `${code(id)} is not in the catalogue${ofMachine(catalogue.id)}`,
      data: { id, machine: catalogue.id, member, ...(near !== undefined && { near }) },
      help: near === undefined ? add(id) : `Perhaps ${code(near)} is meant.`,
      fix: replaceWord(examined, place, 'suggestion', id, near),
    };
  }
}

const ofMachine = (id: string): string => (id === '' ? '' : ` of ${code(id)}`);
