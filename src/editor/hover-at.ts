import { type Condition, parseCondition } from '../applicability/index.ts';
import { machinesMeant, machineWords, onlyWords } from '../derive/index.ts';
import { allActions, allSteps } from '../link/index.ts';
import type { Action, Procedure, Step } from '../syntax/index.ts';
import type { Desk } from './desk.ts';
import { directiveAt } from './directive-at.ts';
import { directiveForm } from './directive-words.ts';
import { isInFront } from './front-at.ts';
import { itemHover } from './hover-item.ts';
import { namedHover } from './hover-named.ts';
import { escaped } from './markdown-text.ts';
import { mentionAt } from './mentions.ts';
import { stateAt } from './state-here.ts';
import { awayText } from './state-words.ts';
import { stepWords } from './steps-in.ts';

export interface HoverText {
  readonly from: number;
  readonly to: number;
  /** In Markdown. */
  readonly text: string;
}

/** What there is to know of what stands at an offset. `rulePage` gives the page of a rule, in Markdown. */
export function hoverAt(
  desk: Desk,
  file: string,
  offset: number,
  rulePage: (id: string) => string | undefined,
): HoverText | undefined {
  const mention = mentionAt(desk, file, offset);
  const written = desk.written(file);
  const action = written && narrowest([...allActions(written)], offset);
  if (mention !== undefined && (mention.form !== 'heading' || action === undefined)) {
    const { named, place } = mention;
    const text =
      named.kind === 'item'
        ? itemHover(desk, named.item, file, action)
        : namedHover(desk, named, rulePage);
    const condition = conditionAt(desk, file, offset);
    const [from, to] = [place.start.offset, place.end.offset];
    if (text !== undefined)
      return { from, to, text: [text, condition].filter(Boolean).join('\n\n') };
  }
  if (written === undefined || isInFront(written.text, offset)) return undefined;
  const named = directiveHover(desk, file, offset, action);
  if (named !== undefined) return named;
  const step = narrowest([...allSteps(written)], offset);
  return step && stepHover(desk, file, written, step);
}

/** A directive's name: what it does, and what it does here. */
function directiveHover(
  desk: Desk,
  file: string,
  offset: number,
  action: Action | undefined,
): HoverText | undefined {
  const text = desk.textOf(file) ?? '';
  const name = directiveAt(text, offset);
  const form = name?.at.part === 'name' ? directiveForm(name.name, name.colons) : undefined;
  if (name?.at.part !== 'name' || form === undefined) return undefined;
  const parts = [`**${form.name}** ${form.does}.`];
  const one = action && stateAt(desk, file, offset)?.one;
  const item = action && one?.item(action.item);
  if (item !== undefined) parts.push(itemHover(desk, item, file, action));
  return { from: name.start, to: name.at.to, text: parts.join('\n\n') };
}

function stepHover(
  desk: Desk,
  file: string,
  written: Procedure,
  step: Step,
): HoverText | undefined {
  const { start, end } = step.place;
  const before = stateAt(desk, file, start.offset);
  const after = stateAt(desk, file, end.offset);
  if (before === undefined || after === undefined) return undefined;
  const [was, is] = [awayText(before.away), awayText(after.away)];
  const { manual } = desk.inspection.linked;
  const only = step.when && onlyWords(step.when.condition, manual.settings.variants);
  const parts = [
    `**${escaped(stepWords(step, written))}**`,
    only && escaped(only),
    was === is ? `Before and after this step:\n\n${was}` : `Before this step:\n\n${was}`,
    was === is ? '' : `After it:\n\n${is}`,
  ];
  return { from: start.offset, to: end.offset, text: parts.filter(Boolean).join('\n\n') };
}

/** For how many machines a condition at an offset holds, in words. */
function conditionAt(desk: Desk, file: string, offset: number): string | undefined {
  const directive = directiveAt(desk.textOf(file) ?? '', offset);
  const at = directive?.at;
  const isWhen =
    (at?.part === 'value' && at.key === 'when') ||
    (at?.part === 'label' && directive?.name === 'when');
  const condition = isWhen ? parseCondition(at.text).value : undefined;
  return condition && machinesText(desk, condition);
}

function machinesText(desk: Desk, condition: Condition): string {
  const { manual } = desk.forAsking.linked;
  const set = machinesMeant(manual.space, condition, manual.space.all);
  const words = machineWords(set, manual.space.all, manual) ?? 'every machine';
  const count = `${manual.space.count(set)} of ${manual.space.count(manual.space.all)} machines`;
  return `The whole condition: ${escaped(words)}, ${count}.`;
}

/** Of what stands around an offset the innermost. */
function narrowest<T extends Pick<Step, 'place'>>(
  all: readonly T[],
  offset: number,
): T | undefined {
  const width = ({ place }: T): number => place.end.offset - place.start.offset;
  return all
    .filter(({ place }) => place.start.offset <= offset && offset <= place.end.offset)
    .toSorted((a, b) => width(a) - width(b))[0];
}
