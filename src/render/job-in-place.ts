import type { Element } from 'hast';
import { h } from 'hastscript';
import { idWords, isAimed, type PlacedJob } from '../derive/index.ts';
import { actionsIn } from '../link/index.ts';
import type { Perform } from '../syntax/index.ts';
import { jobWords } from './job-words.ts';
import { onlyFor } from './only-for.ts';
import { phases } from './phases.ts';
import type { SheetContext } from './sheet-context.ts';
import { shownWhen } from './shown-when.ts';

/** A job whose steps are printed where it is performed: its title, then its phases. */
export interface JobInPlace {
  readonly head: Element;
  readonly work: Element;
}

/** The job that a sheet prints at a block; undefined where a reference stands for it. */
export function jobInPlace(block: Perform, context: SheetContext): JobInPlace | undefined {
  const job = context.numbers.job(block);
  if (job === undefined) return undefined;
  const inner = context.inside(job);
  const { when } = job.one.procedure;
  const here = context.presence.when(block.when);
  const title = h(`h${inner.title}`, { id: inner.titleId }, jobWords(block, job.one, context));
  return {
    head: h('div.job-head', shownWhen(here), [
      ...onlyFor(block.when, context),
      title,
      ...placeWords(job, context),
    ]),
    work: h(
      'section.in-place',
      { ariaLabelledBy: [inner.titleId], ...shownWhen(here, inner.presence.when(when)) },
      [...onlyFor(when, context), ...phases(inner)],
    ),
  };
}

/** Where the job is done, if not at the place that its own words may name. */
function placeWords({ perform, sections }: PlacedJob, { manual }: SheetContext): Element[] {
  const { each } = perform;
  const target = manual.procedures.get(perform.procedure.id);
  if (each === undefined || target === undefined) return [];
  const ids = new Set(sections.map(({ id }) => id));
  const actions = target.procedure.sections.flatMap(({ id, blocks }) =>
    ids.has(id) ? [...actionsIn(blocks)] : [],
  );
  const others = actions.flatMap((action) => {
    const [at] = action.each;
    return at !== undefined && at.id !== each.id && isAimed(action, each, target) ? [at.id] : [];
  });
  const place = idWords(each.id);
  const said = [...new Set(others)].map((id) => `“${idWords(id)}”`).join(' or ');
  const instead = said === '' ? '' : ` Where its words say ${said}, work at “${place}”.`;
  return [h('p.at-place', [h('strong', `Place: ${place}.`), instead])];
}
