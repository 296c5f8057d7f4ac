import { stepNumbers } from '../derive/index.ts';
import { actionsIn } from '../link/index.ts';
import type { Block, Branch, Procedure, Section, Step } from '../syntax/index.ts';
import type { Inside, Piece, Under } from './piece.ts';
import { onOneLine, plainWords } from './plain-words.ts';

const always: Under = { when: [], ways: [] };

/** The pieces of a procedure in order of reading; beside the steps of a section only where something is said. */
export function readPieces(procedure: Procedure): readonly Piece[] {
  return new PieceReader(procedure).pieces;
}

class PieceReader {
  readonly pieces: Piece[] = [];
  readonly #numbers;

  constructor(procedure: Procedure) {
    this.#numbers = stepNumbers(procedure);
    for (const section of procedure.sections) this.#section(section);
  }

  #section(section: Section): void {
    const beside: Piece = { ...empty(section, always), kind: 'beside', place: section.place };
    this.pieces.push(beside);
    this.#read(section.blocks, { piece: beside, section, outer: always, inner: always });
    if (!saysSomething(beside)) this.pieces.splice(this.pieces.indexOf(beside), 1);
  }

  #step(step: Step, section: Section, around: Under): void {
    const under = step.when === undefined ? around : withWhen(around, step.when.condition);
    const piece: Piece = {
      ...empty(section, under),
      kind: 'step',
      step,
      number: this.#numbers.of(step),
      place: step.place,
    };
    piece.needs.push(...step.needs.map(({ id }) => id));
    this.pieces.push(piece);
    this.#read(step.blocks, { piece, section, outer: under, inner: always });
  }

  #read(blocks: readonly Block[], at: At): void {
    for (const block of blocks) this.#block(block, at);
  }

  #block(block: Block, at: At): void {
    const { piece, section, outer, inner } = at;
    const put = <T extends { readonly when?: { readonly condition: Condition } | undefined }>(
      list: Inside<T>[],
      of: T,
    ): void => {
      list.push({ of, under: of.when === undefined ? inner : withWhen(inner, of.when.condition) });
    };
    switch (block.type) {
      case 'prose': {
        const words = plainWords(block.node);
        if (words !== '') piece.words.push(words);
        for (const action of block.actions) put(piece.actions, action);
        return;
      }
      case 'steps':
        for (const step of block.steps) this.#step(step, section, outer);
        return;
      case 'hazard':
        put(piece.hazards, block);
        this.#stepsIn(block.blocks, at);
        return;
      case 'torque':
        piece.boxes.push(`torque ${block.item.id}`);
        if (block.action !== undefined) put(piece.actions, block.action);
        this.#read(block.blocks, at);
        return;
      case 'fluid':
        piece.boxes.push(`fluid ${block.item.id}`);
        this.#read(block.blocks, at);
        return;
      case 'needs':
        piece.needs.push(...block.steps.map(({ id }) => id));
        this.#read(block.blocks, at);
        return;
      case 'figure':
        piece.figures.push(block);
        this.#read(block.blocks, at);
        return;
      case 'perform':
        put(piece.performs, block);
        return;
      case 'reverse':
        put(piece.reverses, block);
        this.#read(block.blocks, within(at, 'in the way back'));
        return;
      case 'guarded': {
        const { condition } = block.when;
        const both = { outer: withWhen(outer, condition), inner: withWhen(inner, condition) };
        this.#read(block.blocks, { ...at, ...both });
        return;
      }
      case 'repeat':
        this.#read(block.blocks, within(at, `repeated ${onOneLine(block.until.text)}`));
        return;
      case 'branch':
        this.#branch(block, at);
        return;
    }
  }

  #branch({ ways, optional }: Branch, at: At): void {
    for (const way of ways) {
      this.#read(way.blocks, within(at, `${optional ? 'if' : 'either'} ${onOneLine(way.label)}`));
    }
  }

  /** The words of a hazard panel are its own; only what is done in it counts with its step. */
  #stepsIn(blocks: readonly Block[], at: At): void {
    for (const action of actionsIn(blocks)) at.piece.actions.push({ of: action, under: at.inner });
  }
}

interface At {
  readonly piece: Piece;
  readonly section: Section;
  /** All that it stands under. */
  readonly outer: Under;
  /** What of that begins inside the piece. */
  readonly inner: Under;
}

type Condition = Under['when'][number];

const withWhen = ({ when, ways }: Under, condition: Condition): Under => ({
  when: [...when, condition],
  ways,
});

function within(at: At, way: string): At {
  const added = ({ when, ways }: Under): Under => ({ when, ways: [...ways, way] });
  return { ...at, outer: added(at.outer), inner: added(at.inner) };
}

function empty({ id, title }: Section, under: Under): Omit<Piece, 'kind' | 'place'> {
  return {
    step: undefined,
    number: undefined,
    section: { id, title },
    under,
    words: [],
    actions: [],
    hazards: [],
    performs: [],
    reverses: [],
    boxes: [],
    figures: [],
    needs: [],
  };
}

const saysSomething = ({ words, actions, hazards, performs, reverses, ...rest }: Piece): boolean =>
  [words, actions, hazards, performs, reverses, rest.boxes, rest.figures, rest.needs].some(
    (list: readonly unknown[]) => list.length > 0,
  );
