import type { Place } from '../../../schemas/finding.ts';
import type { Fastener } from '../../catalogue/index.ts';
import { allActions, type LinkedProcedure } from '../../link/index.ts';
import { locator } from '../../source/index.ts';
import type { Action } from '../../syntax/index.ts';
import { type RunningText, runningTexts } from './running-text.ts';
import { type Sentence, sentencesIn } from './sentences.ts';
import { workProse } from './step-texts.ts';
import { type TorqueFigure, torquesIn } from './torque-figures.ts';

/** A tightening of a fastener, with the torques that its sentence says in words. */
export interface TorqueAction {
  readonly action: Action;
  readonly fastener: Fastener;
  readonly figures: readonly (TorqueFigure & { readonly place: Place })[];
  /** Other fasteners that are tightened in the same sentence. */
  readonly beside: readonly Fastener[];
}

export function* torqueActions(one: LinkedProcedure): Generator<TorqueAction> {
  const sentences = sentencesOf(one);
  for (const action of allActions(one.procedure)) {
    const fastener = fastenerOf(action, one);
    if (fastener === undefined) continue;
    const said = sentences.get(action);
    yield { action, fastener, figures: said?.figures ?? [], beside: said?.beside ?? [] };
  }
}

type Said = Pick<TorqueAction, 'figures' | 'beside'>;

function sentencesOf(one: LinkedProcedure): ReadonlyMap<Action, Said> {
  const source = locator(one.procedure.file, one.procedure.text);
  const found = new Map<Action, Said>();
  for (const prose of workProse(one)) {
    for (const text of runningTexts(prose, source)) {
      for (const sentence of sentencesIn(text.text)) {
        const actions = actionsFrom(text, sentence);
        if (actions.length === 0) continue;
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
  if (action.verb !== 'torque' && action.verb !== 'tighten') return undefined;
  const item = one.item(action.item);
  return item?.kind === 'fastener' ? item : undefined;
}
