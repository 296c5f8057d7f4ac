import type { MachineCondition } from '../../src/applicability/machine-condition.ts';
import { readMachineCondition } from '../../src/applicability/read-machine-condition.ts';
import { jsonIn } from '../../src/source/json-in.ts';
import { choiceWords } from './choice-text.ts';
import { Chooser } from './chooser.ts';
import { isShown } from './is-shown.ts';
import { choiceAtStart, keepChoice } from './kept-choice.ts';
import { readMachineChoice, readStepCount } from './machine-data.ts';
import { always, type Choice, Machines } from './machines.ts';
import { mendSentences } from './sentences.ts';
import { closeUpNumbers } from './step-marks.ts';
import { sayUnfit } from './unfit.ts';

/** Lets the reader of a page say which machine it is for, and shows what applies to that one. */
export function chooseMachine(page: Document): void {
  const cell = page.querySelector<HTMLElement>('[data-machines]');
  const said = cell?.querySelector<HTMLElement>('[data-choice]');
  const selects = cell?.querySelector<HTMLElement>('.chooser');
  if (!cell || !said || !selects) return;
  const given = readMachineChoice(cell.dataset.machines ?? '');
  if (given === undefined) return;
  const within = conditionIn(cell, 'within');
  const machines = new Machines(given);
  const here = new Machines(given, within);
  const key = `tallybolt machine: ${cell.dataset.keep ?? ''}`;
  const all = { cell: said.textContent ?? '', mark: page.documentElement.dataset.machine ?? '' };
  const show = variantPage(page, here);
  const take = (choice: Choice): void => {
    const isFit = machines.isPossible(within ?? always, choice);
    const known = choice.size === 0 ? choice : (isFit ? here : machines).settled(choice);
    said.textContent = choiceWords(machines, known, all.cell);
    page.documentElement.dataset.machine = choiceWords(machines, known, all.mark);
    sayUnfit(page, isFit ? undefined : choiceWords(machines, known, ''));
    show(isFit ? choice : new Map());
    chooser.show(choice);
    keepChoice(key, machines, choice);
  };
  const chooser = new Chooser(selects, machines, take);
  take(choiceAtStart(key, machines));
}

/** Gives the function that shows what applies to a choice. */
function variantPage(page: Document, machines: Machines): (choice: Choice) => void {
  const guards = new Map<Element, Element>();
  for (const guard of page.querySelectorAll('[data-guards]')) {
    const list = guard.closest('ol.steps');
    if (list !== null) guards.set(guard, list);
  }
  const parts = [...page.querySelectorAll<HTMLElement>('[data-when]')].map((element) => ({
    element,
    condition: around(element, guards),
  }));
  const words = [...page.querySelectorAll<HTMLElement>('[data-unless]')].map((element) => ({
    element,
    condition: conditionIn(element, 'unless') ?? undecided,
  }));
  return (choice) => {
    const isChosen = choice.size > 0;
    for (const { element, condition } of parts)
      element.hidden = isChosen && !machines.isPossible(condition, choice);
    for (const { element, condition } of words)
      element.hidden = isChosen && machines.isCertain(condition, choice);
    moveGuards(guards);
    mendSentences(page);
    closeUpNumbers(page);
    for (const element of page.querySelectorAll<HTMLElement>('[data-count]')) {
      const { always, sometimes } = readStepCount(element.dataset.count);
      const count =
        always + sometimes.filter((one) => !isChosen || machines.isPossible(one, choice)).length;
      const steps = count === 1 ? '\u00a0step' : '\u00a0steps';
      const noun = element.textContent?.includes('step') ? steps : '';
      element.textContent = `${count}${noun}`;
    }
    sayLeftOut(page);
  };
}

/** What cannot be read decides nothing: the part is shown. */
const undecided: MachineCondition = ['?'];

/** The condition of a part with those of all parts around it. A hazard is around no step but those of its list. */
function around(element: Element, guards: ReadonlyMap<Element, Element>): MachineCondition {
  const conditions: MachineCondition[] = [];
  for (let at: Element | null = element; at !== null; at = guards.get(at) ?? at.parentElement) {
    const own = at instanceof HTMLElement ? conditionIn(at, 'when') : undefined;
    if (own !== undefined) conditions.push(own);
  }
  return ['&', ...conditions];
}

/** Hazards that guard a list stand in its first step that is shown, so that nothing parts them from it. */
function moveGuards(guards: ReadonlyMap<Element, Element>): void {
  for (const list of new Set(guards.values())) {
    const own = [...guards].flatMap(([guard, of]) => (of === list ? [guard] : []));
    const steps = [...list.children].filter((step) => step.matches('li.step'));
    const first = steps.find((step) => !step.hasAttribute('hidden'));
    const body = first && [...first.children].find((part) => part.matches('.body'));
    if (body === undefined) list.before(...own);
    else body.prepend(...own);
  }
}

/** How many sheets of a list are not for the machine. */
function sayLeftOut(page: Document): void {
  const line = page.querySelector<HTMLElement>('[data-left-out]');
  if (line === null) return;
  const rows = [...page.querySelectorAll('tr[data-sheet]')];
  const count = rows.filter((row) => !isShown(row)).length;
  line.hidden = count === 0;
  line.textContent = `${count} ${count === 1 ? 'sheet is' : 'sheets are'} not for this machine.`;
}

function conditionIn(
  { dataset }: HTMLElement,
  name: 'when' | 'unless' | 'within',
): MachineCondition | undefined {
  return readMachineCondition(jsonIn(dataset[name] ?? ''));
}
