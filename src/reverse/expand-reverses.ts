import type { Place } from '../../schemas/finding.ts';
import { type Ledger, openLedger, sectionsFrom, startOf } from '../ledger/index.ts';
import {
  actionsIn,
  allBlocks,
  type LinkedManual,
  type LinkedProcedure,
  within,
} from '../link/index.ts';
import {
  type Block,
  parseBlocksAt,
  type Reverse,
  type Section,
  type Step,
} from '../syntax/index.ts';
import { counterpartOf } from './counterparts.ts';
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
  const procedures = new Map(manual.procedures);
  const value: LinkedManual = { ...manual, procedures };
  const expansion = new Expansion(value, procedures);
  for (const id of manual.procedures.keys()) expansion.expand(id);
  return { value, facts: expansion.facts };
}

class Expansion {
  readonly facts: ReverseFact[] = [];
  readonly #manual: LinkedManual;
  readonly #procedures: Map<string, LinkedProcedure>;
  readonly #ledger: Ledger;
  readonly #begun = new Set<string>();

  constructor(manual: LinkedManual, procedures: Map<string, LinkedProcedure>) {
    this.#manual = manual;
    this.#procedures = procedures;
    this.#ledger = openLedger(manual);
  }

  /** What a procedure performs is written out before it, since its steps may be looked at. */
  expand(id: string): void {
    const one = this.#procedures.get(id);
    if (one === undefined || this.#begun.has(id)) return;
    this.#begun.add(id);
    const reverses = [...allBlocks(one.procedure)].filter((block) => block.type === 'reverse');
    if (reverses.length === 0) return;
    for (const block of allBlocks(one.procedure)) {
      if (block.type === 'perform') this.expand(block.procedure.id);
    }
    let current = one;
    for (const reverse of reverses) {
      const { procedure } = current;
      const sections = replaceBlock(procedure.sections, reverse, this.#written(current, reverse));
      current = { ...current, procedure: { ...procedure, sections } };
      this.#procedures.set(id, current);
    }
  }

  #written(one: LinkedProcedure, reverse: Reverse): readonly Block[] {
    const section = one.section(reverse.of);
    if (section === undefined) return reverse.blocks;
    const { run, contract } = this.#ledger.run(one, reverse);
    const undone = new Set(sectionsFrom(one, section).map(({ id }) => id));
    const at = { procedure: one.procedure.id, place: reverse.place };
    if (!standsBefore(one, section, reverse)) {
      this.facts.push({
        ...at,
        kind: 'reverse-of-later',
        section: section.id,
        sectionPlace: placeOf(section),
      });
      return reverse.blocks;
    }
    const except = new Set(reverse.except.map((ref) => ref.id));
    const own = ownSteps(reverse);
    const undos = undoBooks(run, {
      expected: (account) => startOf(contract, account),
      isOfInterest: (entry) => undone.has(entry.op.section),
      leftAlone: ({ item }) => except.has(item.id),
      inLots: true,
    }).filter((undo) => !own.some((step) => says(step, undo)));
    this.#ask(one, reverse, section, except);
    if (undos.length === 0 && own.length === 0) {
      this.facts.push({
        ...at,
        kind: 'reverse-empty',
        section: section.id,
        sectionPlace: placeOf(section),
      });
      return [];
    }
    const steps = stepsOf(undos, run, (perform) => this.#counterpart(perform.procedure.id));
    return guarded(reverse, joined(steps, own, reverse.place));
  }

  #counterpart(id: string): string | undefined {
    const one = this.#procedures.get(id);
    return one && counterpartOf(this.#manual, one)?.procedure.id;
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
      this.facts.push({
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
function says(step: Step, undo: Undo): boolean {
  return [...actionsIn(step.blocks)].some(
    ({ verb, item }) => verb === undo.verb && item.id === undo.account.item.id,
  );
}

/** The written steps with the author's own among them: each before the return of its item, or at the end. */
function joined(written: readonly WrittenStep[], own: readonly Step[], place: Place): Block {
  const text = listOf(written);
  const parsed = parseBlocksAt(text, place).flatMap((block) =>
    block.type === 'steps' ? block.steps : [],
  );
  const steps: Step[] = [...parsed];
  const turns: (WrittenStep | undefined)[] = [...written];
  for (const step of own) {
    const at = turns.findIndex((turn) =>
      turn?.undos.some(({ account }) => account.item.id === step.at?.id),
    );
    const index = at < 0 ? steps.length : at;
    steps.splice(index, 0, step);
    turns.splice(index, 0, undefined);
  }
  return { type: 'steps', steps, place };
}

function guarded(reverse: Reverse, list: Block): readonly Block[] {
  const others = reverse.blocks.filter((block) => block.type !== 'steps');
  const { when, place } = reverse;
  if (when === undefined) return [...others, list];
  return [{ type: 'guarded', when, blocks: [...others, list], place }];
}
