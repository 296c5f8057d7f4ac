import type { Place } from '../../../schemas/finding.ts';
import type { Item } from '../../catalogue/index.ts';
import { type LinkedManual, type LinkedProcedure, sectionsFrom, within } from '../../link/index.ts';
import type { Action, Perform, Section } from '../../syntax/index.ts';
import { onceFor } from './once-for.ts';

/** An action, as it is met by whoever works through a procedure. */
export interface Done {
  readonly action: Action;
  readonly item: Item;
  /** In the text of that procedure: the action, or the `::perform` that leads to it. */
  readonly place: Place;
  /** The procedure whose text the action stands in. */
  readonly owner: LinkedProcedure;
}

export interface WorkDone {
  /** What a procedure and those that it performs do, in order; an action that comes more than once, the first time. */
  first(one: LinkedProcedure): readonly Done[];
  /** The same, each action the last time that it comes. */
  last(one: LinkedProcedure): readonly Done[];
}

/** The work of a manual in order, each procedure gone through once. One that performs itself is cut where it comes round. */
export const workDone: (manual: LinkedManual) => WorkDone = onceFor((manual) => {
  const first = new Walk(manual, firsts);
  const last = new Walk(manual, (all) => firsts(all.toReversed()).toReversed());
  return { first: (one) => first.whole(one), last: (one) => last.whole(one) };
});

type Keep = (all: readonly Done[]) => readonly Done[];

class Walk {
  readonly #manual: LinkedManual;
  readonly #keep: Keep;
  readonly #done = new Map<string, readonly Done[]>();
  readonly #open = new Set<string>();

  constructor(manual: LinkedManual, keep: Keep) {
    this.#manual = manual;
    this.#keep = keep;
  }

  whole(one: LinkedProcedure): readonly Done[] {
    return this.#through(one, one.procedure.sections, one.procedure.id);
  }

  #through(one: LinkedProcedure, sections: readonly Section[], key: string): readonly Done[] {
    const before = this.#done.get(key);
    if (before !== undefined) return before;
    if (this.#open.has(key)) return [];
    this.#open.add(key);
    const all: Done[] = [];
    for (const block of within(sections.flatMap((section) => section.blocks))) {
      const actions =
        block.type === 'prose' ? block.actions : block.type === 'torque' ? [block.action] : [];
      for (const action of actions) {
        const item = action && one.item(action.item);
        if (action !== undefined && item !== undefined)
          all.push({ action, item, place: action.place, owner: one });
      }
      if (block.type !== 'perform') continue;
      for (const done of this.#performed(block)) all.push({ ...done, place: block.place });
    }
    const kept = this.#keep(all);
    this.#open.delete(key);
    this.#done.set(key, kept);
    return kept;
  }

  #performed({ procedure, part }: Perform): readonly Done[] {
    const target = this.#manual.procedures.get(procedure.id);
    if (target === undefined) return [];
    if (part === undefined) return this.whole(target);
    const section = target.section(part);
    if (section === undefined) return [];
    return this.#through(target, sectionsFrom(target, section), `${procedure.id}#${part.id}`);
  }
}

function firsts(all: readonly Done[]): readonly Done[] {
  const seen = new Set<Action>();
  return all.filter(({ action }) => {
    const isNew = !seen.has(action);
    seen.add(action);
    return isNew;
  });
}

/** True for a job that begins and ends with the machine as it should be, so that it can be judged by itself. */
export function isWholeJob({ procedure }: LinkedProcedure): boolean {
  const { starts, leaves } = procedure.front;
  return Object.keys(starts).length === 0 && Object.keys(leaves).length === 0;
}
