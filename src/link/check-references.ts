import { type Item, type ItemKind, itemsOfKind, mayHave } from '../catalogue/index.ts';
import { nearest } from '../source/index.ts';
import type { Block, Perform, Ref, Written } from '../syntax/index.ts';
import type { LinkFact } from './facts.ts';
import type { LinkedManual, LinkedProcedure } from './linked.ts';
import { allActions, allBlocks, allSteps } from './walk.ts';

/** Every id that a procedure names: items, procedures, sections, steps. */
export function checkReferences(one: LinkedProcedure, manual: LinkedManual): readonly LinkFact[] {
  const check = new Checker(one, manual);
  check.frontMatter();
  check.actions();
  check.steps();
  for (const block of allBlocks(one.procedure)) check.block(block);
  return check.facts;
}

class Checker {
  readonly facts: LinkFact[] = [];
  readonly #one: LinkedProcedure;
  readonly #manual: LinkedManual;
  readonly #steps = new Map<string, Ref>();

  constructor(one: LinkedProcedure, manual: LinkedManual) {
    this.#one = one;
    this.#manual = manual;
    for (const step of allSteps(one.procedure)) {
      if (step.id === undefined) continue;
      const first = this.#steps.get(step.id.id);
      if (first === undefined) this.#steps.set(step.id.id, step.id);
      else {
        this.facts.push({
          ...this.#at(step.id),
          kind: 'duplicate-step',
          id: step.id.id,
          first: first.place,
        });
      }
    }
  }

  frontMatter(): void {
    const { front, placeOf } = this.#one.procedure;
    const listed = [
      ['tools', ['tool'], front.tools],
      ['consumables', ['consumable', 'circuit'], front.consumables],
    ] as const;
    for (const [member, kinds, ids] of listed) {
      ids.forEach((id, i) => {
        this.#item({ id, place: placeOf(`${member}.${i}`) }, kinds, member);
      });
    }
    front['follow-on'].forEach((id, i) => {
      this.#procedure({ id, place: placeOf(`follow-on.${i}`) });
    });
  }

  actions(): void {
    for (const action of allActions(this.#one.procedure)) {
      this.#item(action.item);
      for (const ref of action.with) this.#item(ref, ['tool', 'consumable', 'aid'], 'with');
      const item = this.#one.item(action.item);
      if (item === undefined) continue;
      const instances = 'each' in item ? (item.each ?? []) : [];
      for (const ref of action.each) this.#known('instance', ref, instances, item.id);
      if (action.limit !== undefined && !item.faulty.has('limits')) {
        const limits = item.limits.flatMap(({ name }) => name ?? []);
        this.#known('limit', action.limit, limits, item.id);
      }
      if (item.kind !== 'control' || action.verb !== 'set') continue;
      if (action.to === undefined) {
        this.facts.push({
          ...this.#at(action),
          kind: 'position-missing',
          item: item.id,
          positions: item.positions,
        });
      } else this.#known('position', action.to, item.positions, item.id);
    }
  }

  steps(): void {
    const known = [...this.#steps.keys()];
    for (const step of allSteps(this.#one.procedure)) {
      for (const ref of step.needs) this.#known('step', ref, known, this.#one.procedure.id);
      if (step.at !== undefined) this.#item(step.at);
      if (step.changed !== undefined) this.#revision(step.changed);
      for (const ref of step.tools) this.#item(ref, ['tool'], 'tools');
      for (const ref of step.consumables) this.#item(ref, ['consumable', 'circuit'], 'consumables');
    }
  }

  block(block: Block): void {
    switch (block.type) {
      case 'hazard':
        if (block.of !== undefined) this.#item(block.of, ['hazard'], 'of');
        return;
      case 'torque':
        if (block.action === undefined) this.#item(block.item);
        this.#fits(block.item, ['fastener', 'connection'], 'item');
        return;
      case 'fluid':
        this.#item(block.item, ['circuit'], 'item');
        return;
      case 'needs':
        for (const ref of block.steps)
          this.#known('step', ref, [...this.#steps.keys()], this.#one.procedure.id);
        return;
      case 'figure':
        for (const { item } of block.callouts) if (item !== undefined) this.#item(item);
        return;
      case 'perform':
        this.#perform(block);
        return;
      case 'reverse':
        this.#section(block.of, this.#one);
        for (const ref of block.except) this.#item(ref);
        return;
      default:
        return;
    }
  }

  #perform({ procedure, part, each }: Perform): void {
    this.#procedure(procedure);
    const target = this.#manual.procedures.get(procedure.id);
    if (target === undefined) return;
    if (part !== undefined) this.#section(part, target);
    if (each === undefined) return;
    const split = itemsDoneApart(target);
    const instances = split.flatMap((item) => ('each' in item ? (item.each ?? []) : []));
    this.#known('instance', each, [...new Set(instances)], split[0]?.id ?? procedure.id);
  }

  /** A manual may have very many, so that they are listed only where one is not among them. */
  #procedure(ref: Ref): void {
    const { byId } = this.#manual.outlines;
    if (!byId.has(ref.id)) this.#unknown('procedure', ref, [...byId.keys()], 'procedures/');
  }

  #section(ref: Ref, owner: LinkedProcedure): void {
    this.#known(
      'section',
      ref,
      owner.procedure.sections.map((section) => section.id),
      owner.procedure.id,
    );
  }

  #revision({ text, place }: Written): void {
    const { id, front } = this.#one.procedure;
    const known = [...front.history.map(({ revision }) => revision), front.revision].filter(
      (revision) => revision !== undefined,
    );
    this.#known('revision', { id: text, place }, [...new Set(known)], id);
  }

  #item(ref: Ref, kinds?: readonly ItemKind[], member?: string): void {
    const { catalogue } = this.#one;
    if (!mayHave(catalogue, ref.id)) {
      const known =
        kinds === undefined ? [...catalogue.items.keys()] : itemsOfKind(catalogue, kinds);
      this.#unknown('item', ref, known, catalogue.id);
    } else if (kinds !== undefined && member !== undefined) this.#fits(ref, kinds, member);
  }

  #fits(ref: Ref, kinds: readonly ItemKind[], member: string): void {
    const item = this.#one.item(ref);
    if (item === undefined || kinds.includes(item.kind)) return;
    this.facts.push({
      ...this.#at(ref),
      kind: 'reference-unfit',
      item: item.id,
      itemKind: item.kind,
      expected: kinds,
      member,
    });
  }

  #known(
    what: 'section' | 'step' | 'position' | 'instance' | 'limit' | 'revision',
    ref: Ref,
    known: readonly string[],
    owner: string,
  ): void {
    if (!known.includes(ref.id)) this.#unknown(what, ref, known, owner);
  }

  #unknown(
    what: (LinkFact & { kind: 'unknown-reference' })['what'],
    ref: Ref,
    known: readonly string[],
    owner: string,
  ): void {
    this.facts.push({
      ...this.#at(ref),
      kind: 'unknown-reference',
      what,
      id: ref.id,
      owner,
      near: nearest(ref.id, known),
      known: [...known],
    });
  }

  #at({ place }: { place: Ref['place'] }): { procedure: string; place: Ref['place'] } {
    return { procedure: this.#one.procedure.id, place };
  }
}

/** Items that a procedure works on at one instance at a time. */
function itemsDoneApart(one: LinkedProcedure): readonly Item[] {
  return [...allActions(one.procedure)].flatMap(({ each, item }) =>
    each.length === 1 ? (one.item(item) ?? []) : [],
  );
}
