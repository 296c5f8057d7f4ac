import type { Element, ElementContent } from 'hast';
import { h } from 'hastscript';
import type { MachineCondition } from '../applicability/index.ts';
import { stepInstances } from '../derive/index.ts';
import type { HazardPanel, Perform, Reverse, Step, StepList } from '../syntax/index.ts';
import { hazardPanel } from './hazard-panel.ts';
import { instanceTicks } from './instance-ticks.ts';
import { jobInPlace } from './job-in-place.ts';
import { belowWords, margin } from './margin.ts';
import { neededSteps } from './needed-steps.ts';
import { onlyFor } from './only-for.ts';
import { referenceBlock } from './reference-block.ts';
import { reverseBlock } from './reverse-block.ts';
import type { SheetContext } from './sheet-context.ts';
import { shownWhen } from './shown-when.ts';
import { stepAnchor } from './site-links.ts';

/**
 * Steps as rows: tick box and number, the text, the margin. `hazards` stand right before the list and go
 * into its first row, so that no page break parts them from the step that they guard.
 */
export function stepList(
  list: StepList,
  hazards: readonly HazardPanel[],
  context: SheetContext,
): Element {
  const rows = list.steps.map((step, i) => stepRow(step, i === 0 ? hazards : [], context));
  return h('ol.steps', rows);
}

/** A job that stands outside the lists, as a list of one row. */
export function jobList(
  job: Perform | Reverse,
  hazards: readonly HazardPanel[],
  context: SheetContext,
): Element {
  const placed = job.type === 'perform' ? jobInPlace(job, context) : undefined;
  const number = context.numbers.of(job) ?? '';
  const when = context.presence.numbered(job);
  const body = [...guards(hazards, context), placed?.head ?? notInPlace(job, context)];
  const lines = linesOf(job, context);
  return h('ol.steps', row({ number, lines, when, body, margin: [], work: placed?.work }));
}

const notInPlace = (job: Perform | Reverse, context: SheetContext): Element =>
  job.type === 'perform' ? referenceBlock(job, context) : reverseBlock(job, context);

function stepRow(step: Step, hazards: readonly HazardPanel[], context: SheetContext): Element {
  const number = context.numbers.of(step) ?? '';
  const job = lastJob(step, context);
  const placed = job && jobInPlace(job, context);
  const blocks = placed === undefined ? step.blocks : step.blocks.slice(0, -1);
  const body = [
    ...changedWords(step, context),
    ...guards(hazards, context),
    ...onlyFor(step.when, context),
    ...neededSteps(step.needs, context),
    ...context.blocks(blocks),
    ...(placed === undefined ? [] : [placed.head]),
    ...belowWords(step, context),
    ...instanceTicks(number, stepInstances(step, context.one)),
  ];
  const when = context.presence.step(step);
  const lines = linesOf(step, context);
  return row({
    number,
    lines,
    when,
    body,
    margin: margin(step, context),
    work: placed?.work,
    isChanged: isChanged(step, context),
  });
}

/** True where a step changed in the revision that the sheet is printed in. */
const isChanged = ({ changed }: Step, { one }: SheetContext): boolean =>
  changed !== undefined && changed.text === one.procedure.front.revision;

function changedWords(step: Step, context: SheetContext): Element[] {
  return isChanged(step, context)
    ? [h('p.changed-words', `Changed in revision ${step.changed?.text}`)]
    : [];
}

/** The only job in place of a step where nothing follows it: its work has the whole width below the step. */
function lastJob({ blocks }: Step, { numbers }: SheetContext): Perform | undefined {
  const jobs = blocks.flatMap((block) =>
    block.type === 'perform' && numbers.job(block) !== undefined ? [block] : [],
  );
  const [job, ...others] = jobs;
  return others.length === 0 && job === blocks.at(-1) ? job : undefined;
}

/** Hazards that guard a whole list. Where the first row is not for a machine, they stand in the next one that is. */
function guards(hazards: readonly HazardPanel[], context: SheetContext): Element[] {
  return hazards.map((panel) => {
    const markup = hazardPanel(panel, context);
    return { ...markup, properties: { ...markup.properties, dataGuards: true } };
  });
}

interface Row {
  readonly number: string;
  /** First and last line of the sheet's own file, for a proof that shows findings at their step. */
  readonly lines: string | undefined;
  readonly when: MachineCondition | undefined;
  readonly body: readonly ElementContent[];
  readonly margin: readonly ElementContent[];
  /** That of a job in place, below all. */
  readonly work: Element | undefined;
  /** A bar marks a step that is new in this revision. */
  readonly isChanged?: boolean;
}

function row({ number, lines, when, body, margin, work, isChanged = false }: Row): Element {
  const tick = h('input', { type: 'checkbox', ariaLabel: `Step ${number} done` });
  const named = { id: stepAnchor(number), dataStep: number, dataLines: lines };
  const className = isChanged ? ['step', 'changed'] : ['step'];
  return h('li', { className, ...named, ...shownWhen(when) }, [
    h('label.tick', [tick, h('span.number', number)]),
    h('div.body', [...body]),
    h('div.margin', [...margin]),
    ...(work === undefined ? [] : [work]),
  ]);
}

const linesOf = ({ place }: Step | Perform | Reverse, { job }: SheetContext): string | undefined =>
  job === undefined ? `${place.start.line}-${place.end.line}` : undefined;
