import { resolveCondition, type Space, type VariantSet } from '../applicability/index.ts';
import type { Item } from '../catalogue/index.ts';
import type { LinkedManual, LinkedProcedure } from '../link/index.ts';
import type { Reverse } from '../syntax/index.ts';
import { Accounts, tally } from './account.ts';
import { balance, withoutConsequences } from './balance.ts';
import { Books } from './books.ts';
import { uncapped } from './caps.ts';
import { type Contract, contractOf, expectedAtEnd, startOf } from './contract.ts';
import type { LedgerFact } from './facts.ts';
import { type Folded, factKey, foldPerformed } from './fold-performed.ts';
import { joinInstances } from './join-instances.ts';
import { traceOf } from './journal.ts';
import { checkNeeds } from './needs.ts';
import { type Precedence, precedenceOf } from './precedence.ts';
import { type Op, programOf } from './program.ts';
import { Run, type Setting } from './run.ts';
import { Summaries } from './summaries.ts';
import type { Summary } from './summary.ts';
import { walk } from './walk.ts';

/** The ledger of a manual, opened: procedures are analysed as they are asked for, each once. */
export interface Ledger {
  readonly summaryOf: (one: LinkedProcedure) => Summary;
  /** What is to be told of a procedure. */
  readonly toldOf: (one: LinkedProcedure) => Folded;
  /** A run over a procedure up to a `::reverse` in it, or to its end. */
  readonly run: (one: LinkedProcedure, until?: Reverse) => { run: Run; contract: Contract };
  /** A run over what stands whole before an offset of the procedure's text. */
  readonly runBefore: (one: LinkedProcedure, offset: number) => { run: Run; contract: Contract };
}

/** Runs every procedure of the manual through the ledger, each once. Facts in order of procedure, then of work. */
export function keepLedger(linked: LinkedManual): readonly LedgerFact[] {
  const ledger = openLedger(linked);
  const told = [...linked.procedures.values()].map((one) => ledger.toldOf(one));
  const performers = Map.groupBy(
    told.flatMap(({ performing }) => performing),
    ({ key }) => key,
  );
  return told
    .flatMap(({ facts }) => facts)
    .map((fact) => {
      const found = fact.origin === undefined ? performers.get(factKey(fact)) : undefined;
      return found === undefined ? fact : { ...fact, performedBy: found.map(({ by }) => by) };
    });
}

export function openLedger(linked: LinkedManual): Ledger {
  const { space } = linked.manual;
  const accounts = new Accounts();
  const precedences = new Map<LinkedProcedure['catalogue'], Precedence>();
  const setting: Setting = {
    space,
    accounts,
    precedence: ({ catalogue }) => {
      let precedence = precedences.get(catalogue);
      if (precedence === undefined) {
        precedence = precedenceOf(catalogue);
        precedences.set(catalogue, precedence);
      }
      return precedence;
    },
    presence: presenceIn(space),
    perform: (run, op) => summaries.perform(run, op),
  };
  const summaries: Summaries = new Summaries(linked, (one) => analyse(one, setting));
  const summaryOf = (one: LinkedProcedure): Summary => summaries.of(one);
  const ofFile = (file: string): Summary | undefined => {
    const outline = linked.outlines.byFile.get(file);
    const one = outline && linked.procedures.get(outline.id);
    return one && summaryOf(one);
  };
  return {
    summaryOf,
    toldOf: (one) => foldPerformed(summaryOf(one), ofFile, space),
    run: (one, until) =>
      summaries.within(one, () =>
        runThrough(one, setting, (op) => op.type === 'reverse' && op.reverse === until),
      ),
    runBefore: (one, offset) =>
      summaries.within(one, () =>
        runThrough(one, setting, ({ type, place }) =>
          type === 'step' ? place.start.offset >= offset : place.end.offset > offset,
        ),
      ),
  };
}

/** The variants that have an item, each item's condition resolved once. */
function presenceIn(space: Space): Setting['presence'] {
  const known = new Map<Item, VariantSet>();
  return (item) => {
    if (item.when === undefined) return space.all;
    const presence = known.get(item) ?? resolveCondition(space, item.when).value;
    known.set(item, presence);
    return presence;
  };
}

function runThrough(
  linked: LinkedProcedure,
  setting: Setting,
  isBehindEnd: (op: Op) => boolean = () => false,
): { run: Run; contract: Contract } {
  const { space, accounts } = setting;
  const { procedure } = linked;
  const scope =
    procedure.when === undefined
      ? space.all
      : resolveCondition(space, procedure.when.condition).value;
  const contract = contractOf(linked, accounts);
  const books = new Books(space, (account) => startOf(contract, account));
  const run = new Run(setting, linked, scope, books);
  const program = programOf(linked, procedure.sections, space, scope);
  const end = program.findIndex(isBehindEnd);
  walk(run, end < 0 ? program : program.slice(0, end));
  return { run, contract };
}

function analyse(linked: LinkedProcedure, setting: Setting): Summary {
  const { run, contract } = runThrough(linked, setting);
  const { books, scope } = run;
  const told = withoutConsequences(run, [
    ...contract.facts,
    ...checkNeeds(linked),
    ...run.facts,
    ...uncapped(run),
    ...balance(run, contract),
  ]);
  const facts = joinInstances(told, linked, (one, from) => run.keep(one, run.setOf(from)));
  const pressures = books.touched().filter((account) => account.aspect === 'pressure');
  return {
    linked,
    contract,
    touched: books.touched(),
    asked: books.asked(),
    changed: [...run.journal.accounts()],
    relieved: pressures.filter(
      (account) =>
        books.where(account, scope, (counts) => tally(account, counts, ['relieved']) === 0)
          .length === 0,
    ),
    left: (account) => {
      const story = run.journal.entries(account, scope);
      const end = expectedAtEnd(contract, account);
      const isEnd = (to: string) => (end[account.states.indexOf(to)] ?? 0) > 0;
      const entry = story.findLast(({ to }) => isEnd(to)) ?? story.at(-1);
      return entry && traceOf(entry);
    },
    scope,
    setOf: (fact) => run.setOf(fact),
    facts,
  };
}
