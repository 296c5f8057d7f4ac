import type { Element, ElementContent } from 'hast';
import { h } from 'hastscript';
import { stepInstances } from '../derive/index.ts';
import type { HazardPanel, Perform, Reverse, Step, StepList } from '../syntax/index.ts';
import { hazardPanel } from './hazard-panel.ts';
import { instanceTicks } from './instance-ticks.ts';
import { margin } from './margin.ts';
import { neededSteps } from './needed-steps.ts';
import { onlyFor } from './only-for.ts';
import { referenceBlock } from './reference-block.ts';
import { reverseBlock } from './reverse-block.ts';
import type { SheetContext } from './sheet-context.ts';
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
  const content =
    job.type === 'perform' ? referenceBlock(job, context) : reverseBlock(job, context);
  const number = context.numbers.of(job) ?? '';
  const panels = hazards.map((panel) => hazardPanel(panel, context));
  return h(
    'ol.steps',
    row({ number, lines: linesOf(job), body: [...panels, content], margin: [] }),
  );
}

function stepRow(step: Step, hazards: readonly HazardPanel[], context: SheetContext): Element {
  const number = context.numbers.of(step) ?? '';
  const body = [
    ...hazards.map((panel) => hazardPanel(panel, context)),
    ...onlyFor(step.when, context),
    ...neededSteps(step.needs, context),
    ...context.blocks(step.blocks),
    ...instanceTicks(number, stepInstances(step, context.one)),
  ];
  return row({ number, lines: linesOf(step), body, margin: margin(step, context) });
}

interface Row {
  readonly number: string;
  /** First and last line of the file, for a proof that shows findings at their step. */
  readonly lines: string;
  readonly body: readonly ElementContent[];
  readonly margin: readonly ElementContent[];
}

function row({ number, lines, body, margin }: Row): Element {
  const tick = h('input', { type: 'checkbox', ariaLabel: `Step ${number} done` });
  return h('li.step', { id: stepAnchor(number), dataStep: number, dataLines: lines }, [
    h('label.tick', [tick, h('span.number', number)]),
    h('div.body', [...body]),
    h('div.margin', [...margin]),
  ]);
}

const linesOf = ({ place }: Step | Perform | Reverse): string =>
  `${place.start.line}-${place.end.line}`;
