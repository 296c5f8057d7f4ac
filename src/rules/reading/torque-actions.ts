import type { Place } from '../../../schemas/finding.ts';
import type { Fastener } from '../../catalogue/index.ts';
import { allActions, type LinkedProcedure } from '../../link/index.ts';
import type { Action } from '../../syntax/index.ts';
import type { Examined } from '../rule.ts';
import { onceFor } from './once-for.ts';
import { placedProse } from './placed-prose.ts';
import { type RunningText, runningTexts } from './running-text.ts';
import { type Sentence, sentencesOf } from './sentences.ts';

import { type TorqueFigure, torquesIn } from './torque-figures.ts';

/** A tightening of a fastener, or a check that it is tight, with the torques that its sentence says in words. */
export interface TorqueAction {
  readonly action: Action;
  readonly fastener: Fastener;
  readonly figures: readonly (TorqueFigure & { readonly place: Place })[];
  /** Other fasteners that are tightened in the same sentence. */
  readonly beside: readonly Fastener[];
}

/** Tightenings in order of reading. */
export function torqueActions(one: LinkedProcedure): readonly TorqueAction[] {
  return saidTorques(one).filter(({ action }) => action.verb !== 'check');
}

/** Tightenings, and checks that something is tight, in order of reading; found once for all rules. */
export const saidTorques: (one: LinkedProcedure) => readonly TorqueAction[] = onceFor((one) => {
  const sentences = saidBeside(one);
  return [...allActions(one.procedure)].flatMap((action) => {
    const fastener = fastenerOf(action, one);
    if (fastener === undefined) return [];
    const said = sentences.get(action);
    return [{ action, fastener, figures: said?.figures ?? [], beside: said?.beside ?? [] }];
  });
});

/** Those that `::reverse` writes out, which no author's sentence says. */
export function torqueActionsWrittenOut(
  examined: Examined,
  one: LinkedProcedure,
): readonly TorqueAction[] {
  const expanded = examined.expanded.procedures.get(one.procedure.id);
  if (expanded === undefined || expanded === one) return [];
  const written = new Set(allActions(one.procedure));
  return [...allActions(expanded.procedure)].flatMap((action) => {
    const isOwn = written.has(action) || action.verb === 'check';
    const fastener = isOwn ? undefined : fastenerOf(action, one);
    return fastener === undefined ? [] : [{ action, fastener, figures: [], beside: [] }];
  });
}

type Said = Pick<TorqueAction, 'figures' | 'beside'>;

function saidBeside(one: LinkedProcedure): ReadonlyMap<Action, Said> {
  const found = new Map<Action, Said>();
  for (const { prose } of placedProse(one)) {
    for (const text of runningTexts(prose, one)) {
      for (const sentence of sentencesOf(text)) {
        const actions = actionsFrom(text, sentence);
        if (!actions.some((action) => fastenerOf(action, one) !== undefined)) continue;
        const said = saidIn(one, text, sentence, actions);
        for (const action of actions) found.set(action, said);
      }
    }
  }
  return found;
}

/** Actions that begin in a sentence. */
function actionsFrom({ stretches }: RunningText, { start, end }: Sentence): Action[] {
  return stretches.flatMap(({ action, start: from }) =>
    action !== undefined && from >= start && from < end ? [action] : [],
  );
}

/** Whether something is tightened, or checked to be tight, by a directive that begins in a sentence. */
export function saysTightening(
  text: RunningText,
  sentence: Sentence,
  one: LinkedProcedure,
): boolean {
  return actionsFrom(text, sentence).some((action) => fastenerOf(action, one) !== undefined);
}

/** Torques that are measured, not tightened to. */
const otherTorque =
  /\b(?:turning|running|rolling|starting|breakaway|break-away|run-on|drag|preload)\b/i;

function saidIn(
  one: LinkedProcedure,
  text: RunningText,
  { start, end }: Sentence,
  actions: readonly Action[],
): Said {
  const words = text.text.slice(start, end);
  const beside = actions.flatMap((action) => fastenerOf(action, one) ?? []);
  if (otherTorque.test(words)) return { figures: [], beside };
  const figures = torquesIn(words).map((figure) => ({
    ...figure,
    place: text.placeOf(start + figure.start, start + figure.end),
  }));
  return { figures, beside };
}

function fastenerOf(action: Action, one: LinkedProcedure): Fastener | undefined {
  if (!['torque', 'tighten', 'check'].includes(action.verb)) return undefined;
  const item = one.item(action.item);
  return item?.kind === 'fastener' ? item : undefined;
}
