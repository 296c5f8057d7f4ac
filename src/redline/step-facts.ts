import type { StepAt } from '../../schemas/redline.ts';
import { nameOf } from '../catalogue/index.ts';
import type { LinkedProcedure } from '../link/index.ts';
import type { Fact, Shift } from './fact.ts';
import { looseKey, looseText, pieceText, stepName } from './loose-words.ts';
import type { Names } from './names.ts';
import { sameNames } from './names.ts';
import { pairAlike } from './pair-alike.ts';
import { type PairedPieces, pairPieces } from './pair-pieces.ts';
import { panelWords } from './panel-words.ts';
import type { Piece } from './piece.ts';
import { type Loose, looseOf, pieceShifts } from './piece-shifts.ts';
import type { ProcedurePair } from './procedure-pair.ts';
import { readPieces } from './read-pieces.ts';
import { verbRiskGone } from './verb-risks.ts';

/** Something loose, with the piece that it stands in. */
interface Found {
  readonly loose: Loose;
  readonly piece: Piece;
  /** The same for what may have moved from one piece into another. */
  readonly key: string;
  /** Whether the piece itself is told as gone or new. */
  readonly isTold: boolean;
}

/** What changed in the steps of a procedure and beside them. */
export function stepFacts(pair: ProcedurePair): readonly Fact[] {
  return new StepComparer(pair).facts;
}

class StepComparer {
  readonly facts: Fact[] = [];
  readonly #before: LinkedProcedure;
  readonly #after: LinkedProcedure;
  readonly #names: Names;
  readonly #paired: PairedPieces;
  /** Of each piece, how many of those that stand on both sides come before it. */
  readonly #rank = new Map<Piece, number>();

  constructor({ before, after, names: given, conditions }: ProcedurePair) {
    this.#before = before;
    this.#after = after;
    const [old, now] = [readPieces(before.procedure), readPieces(after.procedure)];
    this.#paired = pairPieces(old, now, given, sameNames);
    this.#names = withStepIds(given, this.#paired);
    this.#count(old, new Set(this.#paired.pairs.map(([one]) => one)));
    this.#count(now, new Set(this.#paired.pairs.map(([, one]) => one)));

    const [gone, fresh] = [
      this.#foundIn(this.#paired.gone, 'before'),
      this.#foundIn(this.#paired.fresh, 'after'),
    ];
    for (const [one, other] of this.#inOrder()) {
      const told = pieceShifts(one, other, {
        names: this.#names,
        same: sameNames,
        conditions,
        saidBefore: (panel) => panelWords(panel, before),
        saidAfter: (panel) => panelWords(panel, after),
      });
      for (const shift of this.#placeShifts(one, other)) this.#tell(shift, one, other);
      for (const shift of told.shifts) this.#tell(this.#named(shift), one, other);
      gone.push(...told.gone.map((loose) => this.#found(loose, one, 'before', false)));
      fresh.push(...told.fresh.map((loose) => this.#found(loose, other, 'after', false)));
    }
    this.#tellLoose(gone, fresh);
  }

  #inOrder(): PairedPieces['pairs'] {
    const at = new Map([...this.#paired.pairs].map((pair) => [pair, this.#rank.get(pair[1]) ?? 0]));
    return this.#paired.pairs.toSorted((a, b) => (at.get(a) ?? 0) - (at.get(b) ?? 0));
  }

  #count(pieces: readonly Piece[], paired: ReadonlySet<Piece>): void {
    let rank = 0;
    for (const piece of pieces) {
      this.#rank.set(piece, rank);
      if (paired.has(piece)) rank += 1;
    }
  }

  /** Whether what stood in one piece now comes earlier or later among what stands on both sides. */
  #directionOf(one: Piece, other: Piece): Pick<Shift, 'direction'> {
    const [a, b] = [this.#rank.get(one) ?? 0, this.#rank.get(other) ?? 0];
    if (a === b) return {};
    return { direction: b < a ? 'earlier' : 'later' };
  }

  #placeShifts(one: Piece, other: Piece): readonly Shift[] {
    if (one.kind === 'beside') return [];
    const isMoved = [...this.#paired.moved].some(([a]) => a === one);
    const isElsewhere = this.#names.section(one.section.id) !== other.section.id;
    if (!isMoved && !isElsewhere) return [];
    const where = isElsewhere ? { field: 'section' } : {};
    const verbs = verbsOf(other.actions.map(({ of }) => of.verb));
    const warns = other.hazards.length > 0 ? ['hazard'] : [];
    const verb = [...verbs, ...warns].join(', ');
    const passed = isMoved ? this.#protectionPassed(one, other) : '';
    return [
      {
        kind: 'step-moved',
        before: stepName(one),
        after: stepName(other),
        ...(isMoved ? this.#directionOf(one, other) : {}),
        ...where,
        ...(verb === '' ? {} : { verb }),
        ...(passed === '' ? {} : { name: passed }),
      },
    ];
  }

  /** What protects came before a step, and now comes after it: "isolate mains supply". */
  #protectionPassed(one: Piece, other: Piece): string {
    const [was, is] = [this.#rank.get(one) ?? 0, this.#rank.get(other) ?? 0];
    const passed = this.#paired.pairs.filter(
      ([a, b]) => (this.#rank.get(a) ?? 0) < was && (this.#rank.get(b) ?? 0) > is,
    );
    return passed
      .flatMap(([, { actions }]) => actions.map(({ of }) => ({ what: 'action', of }) as const))
      .filter(({ of: { verb } }) => verbRiskGone(verb) === 'protection')
      .map(({ of: { verb, item } }) => {
        const entry = this.#after.item(item);
        return `${verb} ${entry === undefined ? item.id : nameOf(entry)}`;
      })
      .join(', ');
  }

  #foundIn(pieces: readonly Piece[], side: 'before' | 'after'): Found[] {
    return pieces.flatMap((piece) =>
      looseOf(piece).map((loose) => this.#found(loose, piece, side, true)),
    );
  }

  #found(loose: Loose, piece: Piece, side: 'before' | 'after', isTold: boolean): Found {
    const names = side === 'before' ? this.#names : sameNames;
    const one = side === 'before' ? this.#before : this.#after;
    return { loose, piece, key: `${loose.what} ${looseKey(loose, one, names)}`, isTold };
  }

  /** What went from one piece into another is told as that, and the rest as gone or new. */
  #tellLoose(gone: readonly Found[], fresh: readonly Found[]): void {
    const like = (a: Found, b: Found): number => (a.key === b.key ? 1 : 0);
    const moved = pairAlike(gone, fresh, like, 1);
    for (const [one, other] of moved.pairs) {
      const direction = this.#directionOf(one.piece, other.piece);
      if (
        one.piece.kind === 'beside' &&
        other.piece.kind === 'beside' &&
        !('direction' in direction)
      )
        continue;
      const shift = this.#shiftOf(other.loose, this.#after);
      const places = { before: stepName(one.piece), after: stepName(other.piece) };
      this.#tell({ ...shift, field: 'place', ...places, ...direction }, one.piece, other.piece);
    }
    this.#tellPieces('before', this.#paired.gone, moved.gone);
    this.#tellPieces('after', this.#paired.fresh, moved.fresh);
  }

  #tellPieces(side: 'before' | 'after', pieces: readonly Piece[], loose: readonly Found[]): void {
    const one = side === 'before' ? this.#before : this.#after;
    for (const piece of pieces) {
      const inside = loose.filter((found) => found.piece === piece);
      const done = inside.map(({ loose: { what, of } }) => (what === 'action' ? of.verb : what));
      const verb = verbsOf(done).join(', ');
      const shift: Shift = {
        kind: piece.kind === 'beside' ? 'words' : 'step',
        [side]: pieceText(piece, one),
        ...(verb === '' ? {} : { verb }),
      };
      if (side === 'before') this.#tell(shift, piece, undefined);
      else this.#tell(shift, undefined, piece);
    }
    for (const found of loose) {
      if (found.isTold && found.piece.kind === 'step') continue;
      const shift = { ...this.#shiftOf(found.loose, one), [side]: looseText(found.loose, one) };
      if (side === 'before') this.#tell(shift, found.piece, undefined);
      else this.#tell(shift, undefined, found.piece);
    }
  }

  #shiftOf(loose: Loose, one: LinkedProcedure): Shift {
    switch (loose.what) {
      case 'action': {
        const { verb, item } = loose.of;
        return this.#named({ kind: 'action', verb, item: item.id });
      }
      case 'hazard': {
        const { hazard, signal } = panelWords(loose.of, one);
        const entry = loose.of.of === undefined ? {} : { item: loose.of.of.id };
        return { kind: 'hazard', name: hazard, verb: signal, ...entry };
      }
      case 'perform':
        return { kind: 'perform', name: loose.of.procedure.id };
      case 'reverse':
        return { kind: 'reverse', name: loose.of.of.id };
    }
  }

  #named(shift: Shift): Shift {
    if (shift.item === undefined || shift.name !== undefined) return shift;
    const item = this.#after.item(shift.item) ?? this.#before.item(shift.item);
    if (item === undefined) return shift;
    return { ...shift, name: item.kind === 'hazard' ? item.hazard : item.name };
  }

  #tell(shift: Shift, one: Piece | undefined, other: Piece | undefined): void {
    const title = other?.section.title ?? one?.section.title;
    const id = other?.step?.id?.id ?? one?.step?.id?.id;
    const step: StepAt = {
      ...(id === undefined ? {} : { id }),
      ...(one?.number === undefined ? {} : { before: one.number }),
      ...(other?.number === undefined ? {} : { after: other.number }),
      ...(title === undefined ? {} : { section: title }),
    };
    this.facts.push({
      ...shift,
      procedure: this.#after.procedure.id,
      step,
      places: { ...(one && { before: one.place }), ...(other && { after: other.place }) },
      touches: [],
    });
  }
}

/** Names in which a step that is still there keeps its name under another id. */
function withStepIds(names: Names, { pairs }: PairedPieces): Names {
  const ids = new Map(
    pairs.flatMap(([one, other]) => {
      const [a, b] = [one.step?.id?.id, other.step?.id?.id];
      return a === undefined || b === undefined ? [] : [[a, b] as const];
    }),
  );
  return { ...names, step: (id) => ids.get(id) ?? id };
}

const verbsOf = (verbs: readonly string[]): readonly string[] => [...new Set(verbs)];
