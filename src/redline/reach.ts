import type { Item } from '../catalogue/index.ts';
import { performsOf, whereUsed } from '../derive/index.ts';
import type { LinkedManual, LinkedProcedure } from '../link/index.ts';
import { compareText } from '../source/index.ts';
import type { Fact } from './fact.ts';

type Touches = Fact['touches'];

/** Which procedures something outside of their own text reaches. */
export class Reach {
  readonly #used: ReturnType<typeof whereUsed>;
  readonly #performs: ReturnType<typeof performsOf>;

  constructor(manual: LinkedManual) {
    this.#used = whereUsed(manual);
    this.#performs = performsOf(manual);
  }

  /** Procedures whose text uses one of some entries, and all that perform them, directly or through others. */
  ofItems(items: readonly Item[]): Touches {
    return this.of(items.flatMap((item) => this.#used(item).map(({ one }) => one)));
  }

  /** Some procedures and all that perform them, directly or through others. */
  of(own: readonly LinkedProcedure[]): Touches {
    const direct = new Set(own);
    const reached = this.#above(direct);
    const through = ({ procedure }: LinkedProcedure): string => procedure.id;
    return [...direct, ...reached]
      .map((one) => ({
        procedure: one.procedure.id,
        through: direct.has(one)
          ? []
          : this.#performs
              .performs(one)
              .filter((inner) => direct.has(inner) || reached.has(inner))
              .map(through)
              .sort(compareText),
      }))
      .sort((a, b) => compareText(a.procedure, b.procedure));
  }

  #above(direct: ReadonlySet<LinkedProcedure>): ReadonlySet<LinkedProcedure> {
    const reached = new Set<LinkedProcedure>();
    const open = [...direct];
    for (let one = open.pop(); one !== undefined; one = open.pop()) {
      for (const by of this.#performs.performedBy(one)) {
        if (direct.has(by) || reached.has(by)) continue;
        reached.add(by);
        open.push(by);
      }
    }
    return reached;
  }
}
