import type { VariantSet } from '../applicability/index.ts';
import { printCondition, resolveCondition, type Space } from '../applicability/index.ts';
import type { Item, StatefulItem } from '../catalogue/index.ts';
import type { LinkedProcedure } from '../link/index.ts';
import { type Account, type Accounts, type Counts, sameCounts, spread, tally } from './account.ts';
import type { Books } from './books.ts';
import type { LedgerFact, Spread } from './facts.ts';
import { Journal } from './journal.ts';
import { itemStates, type Move, moveOf, verbsFor } from './kinds.ts';
import { isStateful, type Precedence } from './precedence.ts';
import type { Op } from './program.ts';
import {
  awayCount,
  drainPoints,
  isOpen,
  type Requirement,
  requirementsFor,
} from './requirements.ts';
import { isEarlierStage } from './stages.ts';
import { type Transfer, transfer } from './transfer.ts';

type Act = Extract<Op, { type: 'act' }>;
type Perform = Extract<Op, { type: 'perform' }>;

/** What a run needs of the manual. */
export interface Setting {
  readonly space: Space;
  readonly accounts: Accounts;
  readonly precedence: (linked: LinkedProcedure) => Precedence;
  /** The variants that have an item. */
  readonly presence: (item: Item) => VariantSet;
  /** Brings another procedure into a run, at the operation that asks for it. */
  readonly perform: (run: Run, op: Perform) => void;
}

/** One pass over the operations of a procedure, or of one that it performs, on the same books. */
export class Run {
  readonly setting: Setting;
  readonly linked: LinkedProcedure;
  readonly books: Books;
  readonly journal: Journal;
  readonly facts: LedgerFact[] = [];
  /** The variants that the procedure is for. */
  readonly scope: VariantSet;
  readonly #precedence: Precedence;
  readonly #sets = new WeakMap<LedgerFact, VariantSet>();

  constructor(
    setting: Setting,
    linked: LinkedProcedure,
    scope: VariantSet,
    books: Books,
    journal: Journal = new Journal(setting.space),
  ) {
    this.setting = setting;
    this.linked = linked;
    this.scope = scope;
    this.books = books;
    this.journal = journal;
    this.#precedence = setting.precedence(linked);
  }

  go(program: readonly Op[]): void {
    for (const op of program) {
      if (op.under === this.setting.space.none) continue;
      if (op.type === 'step') this.journal.step(op.under);
      else if (op.type === 'act') this.#act(op);
      else if (op.type === 'perform') this.setting.perform(this, op);
    }
  }

  /** The variants in words; undefined where it is all that the procedure is for. */
  when(set: VariantSet): string | undefined {
    const condition = this.setting.space.describe(set, this.scope);
    if (condition === undefined) return undefined;
    return condition === 'too-long' ? this.#example(set) : printCondition(condition);
  }

  #example(set: VariantSet): string {
    const machine = this.setting.space.pick(set) ?? new Map<string, string>();
    return `such as ${[...machine].map(([id, value]) => `${id} = ${value}`).join(' & ')}`;
  }

  #act(op: Act): void {
    const { action } = op;
    const { space, presence } = this.setting;
    const item = this.linked.item(action.item);
    if (item === undefined) return;
    if (!verbsFor(item.kind).includes(action.verb)) {
      this.#tell(op, item, op.under, {
        kind: 'verb-unfit',
        verb: action.verb,
        itemKind: item.kind,
        fitting: verbsFor(item.kind),
      });
      return;
    }
    this.#absent(op, item);
    if (!isStateful(item)) return;
    const present = { ...op, under: space.and(op.under, presence(item)) };
    if (action.verb === 'relieve') {
      this.#relieve(present, item);
      return;
    }
    if (action.verb === 'check' && action.to !== undefined)
      this.#assert(present, item, action.to.id);
    const partly = action.amount !== undefined || isEarlierStage(action, item);
    const how = { isNew: action.isNew, partly, to: action.to?.id };
    const move = moveOf(action.verb, item, how);
    if (move === undefined || !itemStates(item).includes(move.to)) return;
    const accounts = this.setting.accounts.of(
      item,
      action.each.map((ref) => ref.id),
    );
    for (const account of accounts) {
      const moving = this.#apply(present, account, move);
      if (moving !== space.none) this.#settle(present, account, item, moving);
    }
  }

  /** Tells of variants that do not have the item. */
  #absent(op: Act, item: Item): void {
    const { space, presence } = this.setting;
    const without = space.minus(op.under, presence(item));
    const { when } = op.action;
    // A condition with a name that the manual does not have is told already, and says nothing of variants.
    const isDoubtful =
      when !== undefined &&
      resolveCondition(space, when.condition).problems.some(({ code }) => !isAboutTruth(code));
    if (item.when === undefined || without === space.none || isDoubtful) return;
    this.#tell(op, item, without, {
      kind: 'item-absent',
      verb: op.action.verb,
      itemWhen: printCondition(item.when),
      byPlace: item.placeOf('when'),
    });
  }

  /** `:check{item=… to=…}` says in which state the item is by now. */
  #assert(op: Act, item: StatefulItem, state: string): void {
    for (const account of this.setting.accounts.of(
      item,
      op.action.each.map((ref) => ref.id),
    )) {
      const wrong = this.books.where(
        account,
        op.under,
        (counts) => tally(account, counts, [state]) < account.size,
      );
      for (const { set, value } of wrong) {
        const since = this.journal.last(account, set);
        const { verb } = op.action;
        const told = {
          kind: 'state-unfit',
          verb,
          state: spread(account, value),
          from: [state],
          since,
        } as const;
        this.#tell(op, subjectOf(account), set, told);
      }
    }
  }

  /** Tests what must hold first, then moves the pieces. Answers for which variants anything moved. */
  #apply(op: Act, account: Account, move: Move): VariantSet {
    const { space } = this.setting;
    const qty = op.action.qty?.count;
    let moving = space.none;
    for (const { set, value, isTouched } of this.#standings(account, op.under)) {
      const result = this.#outcome(account, value, move, qty, isTouched);
      const stays = result.outcome !== 'moved' && sameCounts(value, result.counts);
      if (!stays) moving = space.or(moving, set);
      if (result.outcome === 'moved') this.#oldPiece(op, account, value, set, result.moved);
      else
        this.#tell(
          op,
          subjectOf(account),
          set,
          this.#misfit(op, account, move, value, set, result),
        );
    }
    if (moving === space.none) return moving;
    this.#require(op, account, move, moving);
    let moved = 0;
    this.books.change(account, moving, (counts) => {
      const next = transfer(account, counts, move, qty);
      moved = Math.max(moved, piecesMoved(counts, next.counts));
      return next.counts;
    });
    const entry = { account, verb: op.action.verb, under: moving, op };
    this.journal.add({ ...entry, moved: Math.max(1, moved), to: move.to });
    this.#closed(account, move, moving);
    return moving;
  }

  /** Where an account stands, apart for the variants in which it has moved and those in which it has not. */
  #standings(account: Account, under: VariantSet) {
    const { space } = this.setting;
    const entries = this.journal.entries(account, under);
    const touched = entries.reduce((set, entry) => space.or(set, entry.under), space.none);
    return this.books.at(account, under).flatMap(({ set, value }) =>
      [
        { set: space.and(set, touched), value, isTouched: true },
        { set: space.minus(set, touched), value, isTouched: false },
      ].filter((standing) => standing.set !== space.none),
    );
  }

  /** A fastener that nothing has undone is tight already: to test its torque is a `check`. */
  #outcome(
    account: Account,
    counts: Counts,
    move: Move,
    qty: number | undefined,
    isTouched: boolean,
  ): Transfer {
    const result = transfer(account, counts, move, qty);
    const { kind } = account.item;
    const isFastened = kind === 'fastener' || kind === 'connection';
    const isIdle = isFastened && !isTouched && sameCounts(counts, result.counts);
    return result.outcome === 'moved' && isIdle ? { outcome: 'already', counts } : result;
  }

  /** A new piece in the place of an old one that is neither thrown away nor said to be. */
  #oldPiece(op: Act, account: Account, counts: Counts, set: VariantSet, moved: number): void {
    const { action } = op;
    const count = moved - tally(account, counts, ['gone']);
    if (action.verb !== 'install' || !action.isNew || count <= 0) return;
    const since = this.journal.last(account, set);
    const itemKind = account.item.kind;
    this.#tell(op, subjectOf(account), set, {
      kind: 'old-unsaid',
      verb: action.verb,
      itemKind,
      count,
      since,
    });
  }

  #misfit(
    op: Act,
    account: Account,
    move: Move,
    counts: Counts,
    set: VariantSet,
    result: Exclude<Transfer, { outcome: 'moved' }>,
  ): Own<LedgerFact> {
    const { verb } = op.action;
    const state = spread(account, counts);
    const since = this.journal.last(account, set);
    const { item } = account;
    switch (result.outcome) {
      case 'too-many':
        return {
          kind: 'too-many',
          verb,
          asked: op.action.qty?.count ?? account.size,
          available: result.available,
          size: account.size,
          state,
          since,
        };
      case 'old-back':
        return {
          kind: 'old-back',
          verb,
          itemKind: item.kind,
          singleUse: 'single-use' in item && item['single-use'],
          count: result.moved,
          since,
        };
      case 'already':
        return {
          kind: 'already-done',
          verb,
          direction: move.direction,
          state,
          since,
        };
      default:
        return { kind: 'state-unfit', verb, state, from: move.from, since };
    }
  }

  #require(op: Act, account: Account, move: Move, moving: VariantSet): void {
    const { item } = account;
    const { accounts, presence, space } = this.setting;
    const onMachine = this.#onMachine(item, moving);
    for (const requirement of requirementsFor(
      op.action.verb,
      account,
      move,
      this.#precedence,
      accounts,
    )) {
      const { by, broken } = requirement;
      const there = space.and(onMachine, presence(by.item));
      for (const { set, value } of this.books.broken(by, there, broken)) {
        this.#broken(op, account, move, requirement, set, value);
      }
    }
    if (item.kind === 'circuit' && op.action.verb === 'drain') this.#drainShut(op, item, moving);
  }

  #broken(
    op: Act,
    { item, instance }: Account,
    move: Move,
    { by, kind }: Requirement,
    broken: VariantSet,
    counts: Counts,
  ): void {
    // The same of the same two is told again only once the second one has moved.
    const set = this.journal.untold(by, this.#keyOf(kind, item, instance), broken);
    if (set === this.setting.space.none) return;
    const { verb } = op.action;
    const common = {
      byPlace: by.item.place,
      since: this.journal.last(by, set),
    };
    const state: Spread = spread(by, counts);
    const id = by.item.id;
    switch (kind) {
      case 'blocked':
        this.#tell(op, item, set, {
          kind,
          verb,
          direction: move.direction,
          by: id,
          state,
          ...common,
        });
        return;
      case 'still-held':
      case 'still-connected':
        this.#tell(op, item, set, { kind, verb, by: id, state, ...common });
        return;
      case 'closed-over':
        this.#tell(op, item, set, { kind, verb, over: id, state, ...common });
        return;
      case 'aid-in-way':
        this.#tell(op, item, set, { kind, verb, aid: id, ...common });
        return;
      case 'nothing-there':
        this.#tell(op, item, set, { kind, verb, part: id, state, ...common });
        return;
      case 'under-pressure':
        this.#tell(op, item, set, { kind, verb, circuit: id, ...common });
        return;
      case 'energy-live':
        this.#tell(op, item, set, { kind, verb, energy: id, ...common });
        return;
      case 'fill-open':
        this.#tell(op, item, set, { kind, point: id, state, ...common });
        return;
    }
  }

  #drainShut(op: Act, circuit: StatefulItem & { kind: 'circuit' }, moving: VariantSet): void {
    const { space, accounts, presence } = this.setting;
    const points = drainPoints(circuit, this.#precedence);
    let shut = moving;
    for (const account of points.flatMap((point) => accounts.of(point))) {
      const there = space.and(shut, presence(account.item));
      for (const { set } of this.books.where(account, there, (counts) => isOpen(account, counts))) {
        shut = space.minus(shut, set);
      }
    }
    for (const { set, items } of this.#present(points, shut)) {
      this.#tell(op, circuit, set, {
        kind: 'drain-shut',
        points: items.map((point) => point.id),
        byPlace: circuit.placeOf('drain'),
      });
    }
  }

  /** Some variants apart by which of the items they have; those that have none are left out. */
  #present(items: readonly StatefulItem[], under: VariantSet) {
    const { space, presence } = this.setting;
    let parts: { set: VariantSet; items: readonly StatefulItem[] }[] = [{ set: under, items: [] }];
    for (const item of items) {
      parts = parts.flatMap((part) => [
        {
          set: space.and(part.set, presence(item)),
          items: [...part.items, item],
        },
        { set: space.minus(part.set, presence(item)), items: part.items },
      ]);
    }
    return parts.filter((part) => part.set !== space.none && part.items.length > 0);
  }

  #relieve(op: Act, item: StatefulItem): void {
    const account = this.setting.accounts.pressureOf(item);
    this.books.change(account, op.under, () => [0, 1]);
    const entry = { account, verb: op.action.verb, under: op.under, op };
    this.journal.add({ ...entry, moved: 1, to: 'relieved' });
  }

  /** A circuit that must be bled is no longer ready when one of its lines has been open. */
  #letAirIn(op: Act, item: StatefulItem & { kind: 'connection' }, under: VariantSet): void {
    const circuit = item.circuit === undefined ? undefined : this.linked.item(item.circuit);
    if (circuit?.kind !== 'circuit' || circuit.bleed === undefined) return;
    const { accounts, presence, space } = this.setting;
    const there = space.and(under, presence(circuit));
    for (const account of accounts.of(circuit)) {
      for (const { set } of this.books.where(account, there, (counts) => (counts[0] ?? 0) > 0)) {
        this.books.change(account, set, () =>
          account.states.map((state) => (state === 'filled' ? 1 : 0)),
        );
        this.journal.add({
          account,
          verb: op.action.verb,
          under: set,
          op,
          moved: 1,
          to: 'filled',
        });
      }
    }
  }

  /** What a move does to other accounts: air gets into an opened line, a full circuit comes under pressure. */
  #settle(op: Act, account: Account, item: StatefulItem, moving: VariantSet): void {
    if (item.kind === 'connection' && op.action.verb === 'disconnect') {
      this.#letAirIn(op, item, moving);
    }
    if (item.kind !== 'circuit') return;
    const full = this.books.where(
      account,
      moving,
      (counts) => tally(account, counts, ['full']) > 0,
    );
    const pressure = this.setting.accounts.pressureOf(item);
    for (const { set } of full) {
      this.books.change(pressure, set, () => [1, 0]);
      const entry = { account: pressure, verb: op.action.verb, under: set, op };
      this.journal.add({ ...entry, moved: 1, to: 'pressurised' });
    }
  }

  /** The variants in which no assembly that the item is part of is off the machine: only there can others be in its way. */
  #onMachine(item: StatefulItem, under: VariantSet): VariantSet {
    const { space, accounts } = this.setting;
    let on = under;
    for (const account of this.#precedence.assembliesOf(item).flatMap((one) => accounts.of(one))) {
      for (const { set } of this.books.where(
        account,
        on,
        (counts) => tally(account, counts, ['out', 'gone']) > 0,
      )) {
        on = space.minus(on, set);
      }
    }
    return on;
  }

  /** What a part closes over will find it in the way when it comes back: one fault, told at the closing. */
  #closed(account: Account, move: Move, under: VariantSet): void {
    const { item } = account;
    if (item.kind !== 'part' || move.direction !== 'back') return;
    const { accounts, presence, space } = this.setting;
    for (const over of this.#precedence.behind(item).flatMap((one) => accounts.of(one))) {
      const there = space.and(this.#onMachine(item, under), presence(over.item));
      const key = this.#keyOf('blocked', over.item, over.instance);
      for (const { set } of this.books.where(
        over,
        there,
        (counts) => awayCount(over, counts) > 0,
      )) {
        this.journal.untold(account, key, set);
      }
    }
  }

  #keyOf(kind: Requirement['kind'], item: StatefulItem, instance: string | undefined): string {
    return [this.linked.procedure.id, kind, item.id, instance].join(' ');
  }

  tell(fact: LedgerFact, set: VariantSet): void {
    this.facts.push(fact);
    this.keep(fact, set);
  }

  /** Remembers the variants that a fact holds for. */
  keep(fact: LedgerFact, set: VariantSet): void {
    this.#sets.set(fact, set);
  }

  /** The variants that a fact of this run holds for. */
  setOf(fact: LedgerFact): VariantSet {
    return this.#sets.get(fact) ?? this.scope;
  }

  #tell(op: Act, { id: item, instance }: Subject, set: VariantSet, fact: Own<LedgerFact>): void {
    const { place } = op;
    const told = {
      procedure: this.linked.procedure.id,
      place,
      item,
      instance,
      when: this.when(set),
    };
    this.tell({ ...told, ...fact }, set);
  }
}

/** A condition that holds always or never is understood all the same. */
const isAboutTruth = (code: string): boolean => code === 'always-true' || code === 'never-true';

/** What a fact is about: an item, or one instance of it. */
interface Subject {
  readonly id: string;
  readonly instance?: string | undefined;
}

const subjectOf = ({ item, instance }: Account): Subject => ({
  id: item.id,
  instance,
});

/** A fact without what all facts have in common. */
export type Own<F> = F extends LedgerFact
  ? Omit<F, 'procedure' | 'place' | 'item' | 'instance' | 'when' | 'inside'>
  : never;

function piecesMoved(before: Counts, after: Counts): number {
  return after.reduce((sum, n, i) => sum + Math.max(0, n - (before[i] ?? 0)), 0);
}
