import { keepLedger, type LedgerFact } from '../../src/ledger/index.ts';
import { actionsIn, type LinkedManual } from '../../src/link/index.ts';
import { holds } from '../applicability/enumeration.ts';
import { type Case, findingsOf, specialise } from './specialise.ts';
import { holdsFor, sayingsOf, unfolded } from './told.ts';
import type { World } from './world.ts';

/** What the ledger of all machines says of one, and what the ledger of that one alone says. Sorted, each once. */
export interface Compared {
  readonly of: string;
  readonly said: readonly string[];
  readonly alone: readonly string[];
  /** Facts whose condition is too long to be told, so that only an example is. */
  readonly unsure: number;
}

/** Every machine with every way through the branches. */
export function* compareAll(world: World, manual: LinkedManual): Generator<Compared> {
  const facts = keepLedger(manual).flatMap(unfolded);
  const blocks = [...manual.procedures.values()].flatMap(({ procedure }) =>
    procedure.sections.flatMap((section) => section.blocks),
  );
  const ways = findingsOf(blocks);
  for (const machine of world.machines) {
    for (const taken of ways) {
      const one = { machine, taken };
      const { sure, unsure } = saidFor(facts, one, manual);
      const alone = expectedFor(manual, one).filter((saying) => !unsure.includes(saying));
      const said = sure.filter((saying) => !unsure.includes(saying));
      yield { of: words(one), said, alone, unsure: unsure.length };
    }
  }
}

function saidFor(facts: readonly LedgerFact[], one: Case, manual: LinkedManual) {
  const ofIt = facts.filter(({ procedure }) => {
    const when = manual.procedures.get(procedure)?.procedure.when;
    return when === undefined || holds(when.condition, one.machine);
  });
  const telling = (sure: boolean | undefined) =>
    distinct(
      ofIt
        .filter((fact) => holdsFor(fact, one) === sure)
        .flatMap((fact) => sayingsOf(fact, manual)),
    );
  return { sure: telling(true), unsure: telling(undefined) };
}

function expectedFor(manual: LinkedManual, one: Case): readonly string[] {
  const alone = specialise(manual, one);
  return distinct(
    [...keepLedger(alone).flatMap(unfolded), ...absentIn(manual, alone)].flatMap((fact) =>
      sayingsOf(fact, manual),
    ),
  );
}

/** Facts on actions of a case whose entries the machine lacks. */
function absentIn(manual: LinkedManual, alone: LinkedManual): LedgerFact[] {
  return [...alone.procedures].flatMap(
    ([
      procedure,
      {
        procedure: { sections },
        catalogue,
      },
    ]) => {
      const all = manual.procedures.get(procedure)?.catalogue;
      const actions = sections.flatMap((section) => [...actionsIn(section.blocks)]);
      return actions
        .filter(({ item }) => all?.items.has(item.id) && !catalogue.items.has(item.id))
        .map(({ item: { id: item }, verb, place }) => {
          const common = { procedure, item, place, when: undefined, itemWhen: '', byPlace: place };
          return { kind: 'item-absent', verb, ...common };
        });
    },
  );
}

const distinct = (sayings: readonly string[]): readonly string[] => [...new Set(sayings)].sort();

const words = ({ machine, taken }: Case): string =>
  [...[...machine].map((pair) => pair.join(' = ')), ...taken].join(' & ');
