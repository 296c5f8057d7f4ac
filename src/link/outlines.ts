import { stronglyConnected } from '../catalogue/index.ts';
import { compareText } from '../source/index.ts';
import { counterpartOf } from './counterpart.ts';
import type { LinkFact } from './facts.ts';
import type { Outline } from './outline.ts';

/** The procedures of a whole manual in outline. The first of two with one id wins. */
export class Outlines {
  /** In order of id. */
  readonly byId: ReadonlyMap<string, Outline>;
  /** In order of id. */
  readonly byFile: ReadonlyMap<string, Outline>;
  /** The procedures that cannot be had by their id, since another has it. */
  readonly facts: readonly LinkFact[];
  /** By machine, since only those of one machine bring home what another leaves. */
  readonly #withContracts: ReadonlyMap<string | undefined, readonly Outline[]>;
  readonly #counterparts = new Map<string, string | undefined>();
  readonly #leads = new Map<string, readonly string[]>();
  #knotsFound: ReadonlyMap<string, readonly string[]> | undefined;

  constructor(all: readonly Outline[]) {
    const byId = new Map<string, Outline>();
    const facts: LinkFact[] = [];
    const inOrder = all.toSorted((a, b) => compareText(a.id, b.id) || compareText(a.file, b.file));
    for (const outline of inOrder) {
      const { id, place } = outline;
      const first = byId.get(id);
      if (first === undefined) byId.set(id, outline);
      else
        facts.push({ kind: 'duplicate-procedure', procedure: id, place, id, first: first.place });
    }
    this.byId = byId;
    this.byFile = new Map([...byId.values()].map((outline) => [outline.file, outline]));
    const withContracts = [...byId.values()].filter(
      ({ starts, leaves }) => Object.keys(starts).length + Object.keys(leaves).length > 0,
    );
    this.#withContracts = Map.groupBy(withContracts, ({ machine }) => machine);
    this.facts = facts;
  }

  /** The id of the one procedure that brings home what another leaves changed. */
  counterpart(id: string): string | undefined {
    const one = this.byId.get(id);
    if (one === undefined) return undefined;
    if (!this.#counterparts.has(id))
      this.#counterparts.set(id, counterpartOf(one, this.#withContracts.get(one.machine) ?? []));
    return this.#counterparts.get(id);
  }

  /**
   * The procedures of the manual that one performs or, where it is written out, may perform: a `::reverse` undoes
   * what a performed one does by its counterpart. In order of id.
   */
  leads(id: string): readonly string[] {
    const known = this.#leads.get(id);
    if (known !== undefined) return known;
    const performs = (this.byId.get(id)?.performs ?? []).filter((one) => this.byId.has(one));
    const undoing = performs.flatMap((one) => this.counterpart(one) ?? []);
    const leads = [...new Set([...performs, ...undoing])].toSorted(compareText);
    this.#leads.set(id, leads);
    return leads;
  }

  /** The procedures that lead to each other round about, with the one that is asked for; in order of id. */
  knot(id: string): readonly string[] {
    this.#knotsFound ??= new Map(
      stronglyConnected([...this.byId.keys()], (one) => this.leads(one)).flatMap((knot) =>
        knot.map((member) => [member, knot] as const),
      ),
    );
    return this.#knotsFound.get(id) ?? [id];
  }

  /**
   * A procedure and all that it leads to, directly or not: each after what it leads to itself, and those of a knot
   * side by side in order of id. What is done is left out, with all that only it leads to. Safe for chains of any
   * length.
   */
  order(id: string, isDone: (id: string) => boolean = () => false): readonly string[] {
    const order: string[] = [];
    const seen = new Set<string>();
    const enter = (one: string): Open | undefined => {
      if (seen.has(one) || isDone(one) || !this.byId.has(one)) return undefined;
      const members = this.knot(one);
      for (const member of members) seen.add(member);
      return { members, left: members.flatMap((member) => this.leads(member)) };
    };
    const first = enter(id);
    const path = first === undefined ? [] : [first];
    for (let top = path.at(-1); top !== undefined; top = path.at(-1)) {
      const next = top.left.pop();
      if (next === undefined) {
        order.push(...top.members);
        path.pop();
      } else {
        const inner = enter(next);
        if (inner !== undefined) path.push(inner);
      }
    }
    return order;
  }
}

interface Open {
  readonly members: readonly string[];
  readonly left: string[];
}
