import { blocksIn } from '../link/index.ts';
import type { Block, Perform, Procedure, Reverse, Section, Step } from '../syntax/index.ts';
import type { PlacedText, Placing } from './placing.ts';

/** What has a number and a tick box on a sheet: a step, or a job of another sheet that stands outside the lists. */
export type Numbered = Step | Perform | Reverse;

export interface StepNumbers {
  /** `7`, or `3.1` for a step inside step 3. */
  of(numbered: Numbered): string | undefined;
  /** Number of the step that the writer gave this id. */
  byId(id: string): string | undefined;
  /** How many numbers of the first rank there are, of the whole sheet or of one section with the deeper ones below it. */
  total(section?: Section): number;
  /** A job that is printed in place there; undefined where a reference stands for it. */
  job(perform: Perform): PlacedJob | undefined;
}

/** A job that a sheet prints where it is performed. */
export interface PlacedJob extends Pick<PlacedText, 'one' | 'sections'> {
  readonly perform: Perform;
  /** The section of the text around it. */
  readonly within: Section;
  /** `12.1`, `12.2` … in step 12. */
  readonly numbers: StepNumbers;
  /** What no other job on the sheet has: `12`, or `12-2` for a second one in step 12. */
  readonly key: string;
}

/** Numbers the steps of a procedure from 1 through all its sections, in order of reading. */
export function stepNumbers(procedure: Procedure, placing: Placing = () => undefined): StepNumbers {
  return numbersIn({ sections: procedure.sections, placing }, '', 0).numbers;
}

/** Numbers that begin with `prefix` and go on after `from`. */
function numbersIn(
  text: Pick<PlacedText, 'sections' | 'placing'> & Partial<Pick<PlacedText, 'originals'>>,
  prefix: string,
  from: number,
): { readonly numbers: StepNumbers; readonly last: number } {
  const { sections, placing, originals } = text;
  const numbers = new Map<Numbered, string>();
  const ids = new Map<string, string>();
  const totals = new Map<Section, number>();
  const jobs = new Map<Perform, PlacedJob>();
  const keys = new Map<string, number>();

  const name = (numbered: Numbered, number: string): void => {
    numbers.set(numbered, number);
    const original = originals?.get(numbered);
    if (original !== undefined) numbers.set(original, number);
  };
  const give = (step: Step, number: string, section: Section): void => {
    name(step, number);
    const id = step.id?.id;
    if (id !== undefined && !ids.has(id)) ids.set(id, number);
    count(step.blocks, `${number}.`, 0, { section, isInStep: true });
  };
  /** Gives the steps of a job that is printed in place their numbers, in those of the step `number`. */
  const put = (perform: Perform, number: string, begun: number, within: Section): number => {
    const placed = placing(perform, within);
    if (placed === undefined) return begun;
    const order = (keys.get(number) ?? 0) + 1;
    keys.set(number, order);
    const inner = numbersIn(placed, `${number}.`, begun);
    const { one, sections } = placed;
    const key = order === 1 ? number : `${number}-${order}`;
    const job = { perform, one, sections, within, numbers: inner.numbers, key };
    jobs.set(perform, job);
    const original = originals?.get(perform);
    if (original?.type === 'perform') jobs.set(original, job);
    return inner.last;
  };
  const count = (
    blocks: readonly Block[],
    prefix: string,
    from: number,
    at: { readonly section: Section; readonly isInStep: boolean },
  ): number => {
    let last = from;
    for (const block of blocks) {
      if (block.type === 'steps') {
        for (const step of block.steps) give(step, `${prefix}${++last}`, at.section);
      } else if (block.type === 'perform' || block.type === 'reverse') {
        if (!at.isInStep) name(block, `${prefix}${++last}`);
        if (block.type === 'reverse') continue;
        if (at.isInStep) last = put(block, prefix.slice(0, -1), last, at.section);
        else put(block, `${prefix}${last}`, 0, at.section);
      } else last = count(blocksIn(block), prefix, last, at);
    }
    return last;
  };

  let last = from;
  for (const section of sections) {
    const next = count(section.blocks, prefix, last, { section, isInStep: false });
    totals.set(section, next - last);
    last = next;
  }
  return {
    last,
    numbers: {
      of: (numbered) => numbers.get(numbered),
      byId: (id) => ids.get(id),
      job: (perform) => jobs.get(perform),
      total: (section) => {
        if (section === undefined) return last - from;
        const after = sections.slice(sections.indexOf(section) + 1);
        const end = after.findIndex(({ depth }) => depth <= section.depth);
        const below = end < 0 ? after : after.slice(0, end);
        return [section, ...below].reduce((sum, one) => sum + (totals.get(one) ?? 0), 0);
      },
    },
  };
}
