import {
  type ConditionProblem,
  parseCondition,
  resolveCondition,
  type VariantSet,
} from '../applicability/index.ts';
import type { LinkedManual, LinkedProcedure } from '../link/index.ts';
import { compareText, nearest } from '../source/index.ts';
import { machinesOf } from './gather.ts';
import { itemName } from './item-name.ts';
import { type PullKind, type PullLine, pullGroups } from './pull-line.ts';
import { pullLines } from './pull-lines.ts';
import { PullReader } from './pull-reader.ts';

/** What must be handed out before some procedures start. */
export interface PullList {
  /** In the order in which they were asked for, each once; without those that are for other machines. */
  readonly procedures: readonly LinkedProcedure[];
  /** The condition as it was asked for; undefined for all machines. */
  readonly for: string | undefined;
  /** Group by group (`pullGroups`), then by name; what goes with a fastener or belongs to a mix stays together. */
  readonly lines: readonly PullLine[];
}

export type PullProblem =
  | { readonly code: 'unknown-procedure'; readonly id: string; readonly near?: string }
  | { readonly code: 'condition-wrong'; readonly problem: ConditionProblem }
  /** None of the asked machines is one that the procedure is for. */
  | { readonly code: 'for-other-machines'; readonly procedure: LinkedProcedure };

export interface PullListResult {
  readonly value: PullList;
  readonly problems: readonly PullProblem[];
}

/**
 * Lists tools, aids, new parts, consumables and fluids for procedures by id, those that they perform
 * included. What is used up adds up over all of them; a tool serves all. With a condition (`feed =
 * hydraulic & winch`), only for the machines that meet it.
 */
export function pullList(
  manual: LinkedManual,
  ids: readonly string[],
  condition?: string,
): PullListResult {
  return new PullLister(manual).list(ids, condition);
}

/** Makes many lists of one manual and reads each procedure once. */
export class PullLister {
  readonly #manual: LinkedManual;
  readonly #reader: PullReader;

  constructor(manual: LinkedManual) {
    this.#manual = manual;
    this.#reader = new PullReader(manual);
  }

  list(ids: readonly string[], condition?: string): PullListResult {
    const problems: PullProblem[] = [];
    const { space } = this.#manual.manual;
    const wanted = this.#wanted(condition, problems);
    let machines = space.none;
    const procedures = [...new Set(ids)].flatMap((id) => {
      const one = this.#procedure(id, problems);
      if (one === undefined || wanted === undefined) return [];
      const own = space.and(machinesOf(one, this.#manual), wanted);
      machines = space.or(machines, own);
      if (own !== space.none) return [one];
      problems.push({ code: 'for-other-machines', procedure: one });
      return [];
    });
    const asked = procedures.map((one) => [one, this.#reader.of(one)] as const);
    const lines = pullLines(this.#manual, asked, machines).toSorted(inOrder);
    return { value: { procedures, for: condition, lines }, problems };
  }

  #procedure(id: string, problems: PullProblem[]): LinkedProcedure | undefined {
    const { procedures } = this.#manual;
    const one = procedures.get(id);
    if (one !== undefined) return one;
    const near = nearest(id, procedures.keys());
    problems.push({ code: 'unknown-procedure', id, ...(near === undefined ? {} : { near }) });
    return undefined;
  }

  /** The machines that are asked for; undefined where the condition cannot be used. */
  #wanted(text: string | undefined, problems: PullProblem[]): VariantSet | undefined {
    const { space } = this.#manual.manual;
    if (text === undefined) return space.all;
    const parsed = parseCondition(text);
    if (parsed.value === undefined) {
      problems.push(...parsed.problems.map(wrong));
      return undefined;
    }
    const resolved = resolveCondition(space, parsed.value);
    const faults = resolved.problems.filter(({ code }) => code !== 'always-true');
    problems.push(...faults.map(wrong));
    return faults.length > 0 ? undefined : resolved.value;
  }
}

const wrong = (problem: ConditionProblem): PullProblem => ({ code: 'condition-wrong', problem });

const pullGroup = (kind: PullKind): number =>
  pullGroups.findIndex(({ kinds }) => kinds.includes(kind));

function inOrder(a: PullLine, b: PullLine): number {
  return (
    pullGroup(a.kind) - pullGroup(b.kind) ||
    compareText(itemName(a.item), itemName(b.item)) ||
    compareText(a.item.id, b.item.id) ||
    compareText(a.one.procedure.id, b.one.procedure.id)
  );
}
