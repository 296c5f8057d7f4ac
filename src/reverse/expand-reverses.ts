import type { Place } from '../../schemas/finding.ts';
import { type Ledger, openLedger, startOf } from '../ledger/index.ts';
import {
  actionsIn,
  allBlocks,
  type LinkedManual,
  type LinkedProcedure,
  sectionsFrom,
  within,
} from '../link/index.ts';
import {
  type Block,
  parseBlocksAt,
  type Reverse,
  type Section,
  type Step,
} from '../syntax/index.ts';
import type { ReverseFact } from './facts.ts';
import { replaceBlock } from './replace-block.ts';
import type { Undo } from './undo.ts';
import { undoBooks } from './undo-books.ts';
import { listOf, stepsOf, type WrittenStep } from './undo-text.ts';

/** Writes out every `::reverse` of a manual: afterwards its steps are steps like any others. */
export function expandReverses(manual: LinkedManual): {
  value: LinkedManual;
  facts: readonly ReverseFact[];
} {
  const expansion = new Expansion(manual);
  for (const id of manual.procedures.keys()) expansion.expand(id);
  const facts = [...manual.procedures.keys()].flatMap((id) => expansion.factsOf(id));
  return { value: expansion.value, facts };
}

/** A procedure with every `::reverse` written out, and what is wrong with them. */
export interface WrittenOut {
  readonly one: LinkedProcedure;
  readonly facts: readonly ReverseFact[];
}

/** A manual of which more and more is written out. */
export class Expansion {
  /** Its procedures are those that are written out by now, and the others as they are. */
  readonly value: LinkedManual;
  readonly #facts = new Map<string, ReverseFact[]>();
  readonly #known: ReadonlyMap<string, WrittenOut>;
  readonly #procedures: Map<string, LinkedProcedure>;
  readonly #ledger: Ledger;

  /** `known` are procedures that have been written out before, with all that they lead to as it is now. */
  constructor(manual: LinkedManual, known: ReadonlyMap<string, WrittenOut> = new Map()) {
    this.#known = known;
    this.#procedures = new Map(manual.procedures);
    this.value = { ...manual, procedures: this.#procedures };
    this.#ledger = openLedger(this.value);
  }

  /** Writes out a procedure, and before it what it performs, since its steps may be looked at. */
  expand(id: string): void {
    const isDone = (one: string): boolean => this.#facts.has(one);
    for (const each of this.value.outlines.order(id, isDone)) this.#expand(each);
  }

  /** What is wrong with the `::reverse` of a procedure that has been written out. */
  factsOf(id: string): readonly ReverseFact[] {
    return this.#facts.get(id) ?? [];
  }

  /** Writes out a procedure, for another expansion to know it. */
  of(id: string): WrittenOut | undefined {
    this.expand(id);
    const one = this.#procedures.get(id);
    return one && { one, facts: this.factsOf(id) };
  }

  #expand(id: string): void {
    const one = this.#procedures.get(id);
    if (one === undefined || this.#facts.has(id)) return;
    const known = this.#known.get(id);
    if (known !== undefined) {
      this.#facts.set(id, [...known.facts]);
      this.#procedures.set(id, known.one);
      return;
    }
    this.#facts.set(id, []);
    const reverses = [...allBlocks(one.procedure)].filter((block) => block.type === 'reverse');
    let current = one;
    for (const reverse of reverses) {
      const { procedure } = current;
      const sections = replaceBlock(procedure.sections, reverse, this.#written(current, reverse));
      current = { ...current, procedure: { ...procedure, sections } };
      this.#procedures.set(id, current);
    }
  }

  #tell(fact: ReverseFact): void {
    this.#facts.get(fact.procedure)?.push(fact);
  }

  #written(one: LinkedProcedure, reverse: Reverse): readonly Block[] {
    const section = one.section(reverse.of);
    if (section === undefined) return [reverse];
    const { run, contract } = this.#ledger.run(one, reverse);
    const undone = new Set(sectionsFrom(one, section).map(({ id }) => id));
    const at = { procedure: one.procedure.id, place: reverse.place };
    if (!standsBefore(one, section, reverse)) {
      this.#tell({
        ...at,
        kind: 'reverse-of-later',
        section: section.id,
        sectionPlace: placeOf(section),
      });
      return [reverse];
    }
    const except = new Set(reverse.except.map((ref) => ref.id));
    const own = ownSteps(reverse);
    const all = undoBooks(run, {
      expected: (account) => startOf(contract, account),
      isOfInterest: (entry) => undone.has(entry.op.section),
      leftAlone: ({ item }) => except.has(item.id),
      inLots: true,
    });
    const undos = all.filter((undo) => !own.some((step) => says(step, undo)));
    this.#ask(one, reverse, section, except);
    this.#tellUnused(one, section, own, all);
    if (undos.length === 0 && own.length === 0) {
      this.#tell({
        ...at,
        kind: 'reverse-empty',
        section: section.id,
        sectionPlace: placeOf(section),
      });
      return [];
    }
    const turns = own.map((step) => turnOf(step, all));
    const cuts = turns.flatMap((turn) => undos.find((undo) => all.indexOf(undo) >= turn) ?? []);
    const steps = stepsOf(undos, run, ({ procedure: { id } }) => this.#counterpart(id), cuts);
    const places = turns.map((turn) =>
      steps.findIndex((step) => step.undos.some((undo) => all.indexOf(undo) >= turn)),
    );
    return guarded(reverse, joined(steps, own, places, reverse.place));
  }

  #counterpart(id: string): string | undefined {
    return this.value.outlines.counterpart(id);
  }

  /** Tells of steps that wait for the return of what does not come back; a reading alone is no return. */
  #tellUnused(
    one: LinkedProcedure,
    section: Section,
    own: readonly Step[],
    all: readonly Undo[],
  ): void {
    const returned = new Set(all.map(({ account }) => account.item.id));
    for (const action of actionsIn(section.blocks))
      if (action.verb === 'measure') returned.add(action.item.id);
    for (const { at } of own) {
      if (at === undefined || returned.has(at.id) || one.item(at) === undefined) continue;
      this.#tell({
        kind: 'reverse-at-unused',
        procedure: one.procedure.id,
        place: at.place,
        section: section.id,
        sectionPlace: placeOf(section),
        item: at.id,
      });
    }
  }

  /** Asks for what no step can undo, where the author neither leaves it out nor has a step of his own there. */
  #ask(
    one: LinkedProcedure,
    reverse: Reverse,
    section: Section,
    except: ReadonlySet<string>,
  ): void {
    const answered = new Set(ownSteps(reverse).flatMap((step) => step.at?.id ?? []));
    for (const action of actionsIn(section.blocks)) {
      const item = one.item(action.item);
      const isLost = action.verb === 'discard' && item?.kind === 'part' && !item['single-use'];
      if (action.verb !== 'measure' && !isLost) continue;
      if (except.has(action.item.id) || answered.has(action.item.id)) continue;
      this.#tell({
        kind: 'reverse-asks',
        procedure: one.procedure.id,
        place: reverse.place,
        section: section.id,
        verb: action.verb,
        item: action.item.id,
        done: action.place,
      });
    }
  }
}

const placeOf = (section: Section): Place => section.headingPlace ?? section.place;

function standsBefore({ procedure }: LinkedProcedure, section: Section, reverse: Reverse): boolean {
  const own = procedure.sections.findIndex((one) => [...within(one.blocks)].includes(reverse));
  return procedure.sections.indexOf(section) < own;
}

const ownSteps = (reverse: Reverse): readonly Step[] =>
  reverse.blocks.flatMap((block) => (block.type === 'steps' ? block.steps : []));

/** True where the author's own step says what would be written. */
function says(step: Step, { verb, account }: Undo): boolean {
  return [...actionsIn(step.blocks)].some(
    (action) =>
      action.verb === verb &&
      action.item.id === account.item.id &&
      (action.each.length === 0 || action.each.some(({ id }) => id === account.instance)),
  );
}

/**
 * Where among all that is to be undone the author's own step is done: in place of what it says, or before the
 * return of the item that it names; otherwise after all of it.
 */
function turnOf(step: Step, all: readonly Undo[]): number {
  const at = step.at?.id;
  const isThere = ({ account }: Undo): boolean => at === undefined || account.item.id === at;
  const said = all.findIndex((undo) => isThere(undo) && says(step, undo));
  const named = at === undefined ? -1 : all.findIndex(isThere);
  return said >= 0 ? said : named >= 0 ? named : all.length;
}

/** The written steps with the author's own among them, each before the written one of its place; -1 is the end. */
function joined(
  written: readonly WrittenStep[],
  own: readonly Step[],
  places: readonly number[],
  place: Place,
): Block {
  const parsed = parseBlocksAt(listOf(written), place).flatMap((block) =>
    block.type === 'steps' ? block.steps : [],
  );
  const before = (i: number): readonly Step[] => own.filter((_, n) => places[n] === i);
  const steps = [...parsed.flatMap((step, i) => [...before(i), step]), ...before(-1)];
  return { type: 'steps', steps, place };
}

function guarded(reverse: Reverse, list: Block): readonly Block[] {
  const others = reverse.blocks.filter((block) => block.type !== 'steps');
  const { when, place } = reverse;
  if (when === undefined) return [...others, list];
  return [{ type: 'guarded', when, blocks: [...others, list], place }];
}
