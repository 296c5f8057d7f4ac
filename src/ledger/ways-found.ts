import type { Space, VariantSet } from '../applicability/index.ts';
import type { Branch } from '../syntax/index.ts';

/**
 * What the technician may find is an attribute that no machine decides. A finding that was asked for before is
 * the same one: whoever found the belt cracked in step 1 has a cracked belt in step 9.
 */
export class WaysFound {
  /** By the label as written, of two the later one: a condition may name it. */
  readonly labels = new Map<string, VariantSet>();
  readonly #space: Space;
  readonly #bySaying = new Map<string, VariantSet>();

  constructor(space: Space) {
    this.#space = space;
  }

  /** For each way of a branch the variants and findings in which it is taken. */
  taken(branch: Branch): readonly VariantSet[] {
    const sayings = branch.ways.map(({ label }) => saidOf(label));
    const known = sayings.map((saying) => this.#bySaying.get(saying));
    const isAsked = known.some((set) => set !== undefined);
    const isClear = new Set(sayings).size === sayings.length;
    const taken =
      isAsked && isClear ? this.#again(branch, known) : this.#fresh(branch, [...known.keys()]);
    branch.ways.forEach(({ label }, i) => {
      const set = taken[i] ?? this.#space.none;
      const saying = sayings[i] ?? '';
      if (!this.#bySaying.has(saying)) this.#bySaying.set(saying, set);
      this.labels.set(label, set);
    });
    return taken;
  }

  /**
   * Exactly one of the ways is taken. A way that is known is taken where it was found and no other known one was;
   * what that leaves open falls to the ways that are new or, where none is, to any of them.
   */
  #again(branch: Branch, known: readonly (VariantSet | undefined)[]): readonly VariantSet[] {
    const space = this.#space;
    const found = known.map((set) => set ?? space.none);
    const decided = found.map((set, i) =>
      found.reduce((rest, other, j) => (i === j ? rest : space.minus(rest, other)), set),
    );
    const open = decided.reduce((rest, set) => space.minus(rest, set), space.all);
    if (branch.optional || open === space.none) return decided;
    const isDisjoint = decided.every((set, i) => set === found[i]);
    const news = [...known.keys()].filter((i) => known[i] === undefined);
    const candidates = isDisjoint && news.length > 0 ? news : [...known.keys()];
    const ways = this.#fresh(branch, candidates);
    return decided.map((set, i) => space.or(set, space.and(open, ways[i] ?? space.none)));
  }

  /** A finding of its own that decides between some of the ways. */
  #fresh({ ways, optional }: Branch, among: readonly number[]): readonly VariantSet[] {
    const space = this.#space;
    const [first, ...others] = among.map((i) => ({ value: `way ${i + 1}`, label: ways[i]?.label }));
    if (first === undefined) return [];
    if (others.length === 0 && !optional)
      return ways.map((_, i) => (among.includes(i) ? space.all : space.none));
    const past = optional ? [{ value: 'none', label: undefined }] : [];
    const { id } = space.fresh([first, ...others, ...past], first.label ?? '');
    return ways.map((_, i) => (among.includes(i) ? space.is(id, `way ${i + 1}`) : space.none));
  }
}

const saidOf = (label: string): string => label.trim().toLowerCase().replaceAll(/\s+/g, ' ');
