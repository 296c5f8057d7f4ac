import { isShown } from './is-shown.ts';
import { renumber } from './renumber.ts';

/** Closes the numbers of the steps up, and with them everything that names a step by its number. */
export function closeUpNumbers(page: ParentNode): void {
  const steps = [...page.querySelectorAll<HTMLElement>('li.step[data-step]')];
  const numbers = renumber(
    steps.map((step) => ({ number: step.dataset.step ?? '', isShown: isShown(step) })),
  );
  for (const step of steps) {
    const number = numbers.get(step.dataset.step ?? '');
    if (number === undefined) continue;
    const own = step.querySelector('.number');
    if (own !== null) own.textContent = number;
    for (const named of step.querySelectorAll('[aria-label^="Step "]')) {
      if (named.closest('li.step') !== step) continue;
      const label = named.getAttribute('aria-label') ?? '';
      named.setAttribute('aria-label', label.replace(/^Step [\d.]+/, `Step ${number}`));
    }
  }
  for (const list of page.querySelectorAll<HTMLElement>('[data-listed]')) relist(list, numbers);
}

/** "steps 2, 5 and 7" without those that are not shown; the line goes with the last of them. */
function relist(list: HTMLElement, numbers: ReadonlyMap<string, string>): void {
  const shown: Element[] = [];
  for (const named of list.children) {
    const marked = named.matches('[data-number]') ? named : named.querySelector('[data-number]');
    const old = marked?.getAttribute('data-number');
    const number = old && numbers.get(old);
    const isGone = Boolean(old) && number === undefined;
    named.toggleAttribute('hidden', isGone);
    if (marked && number) marked.textContent = number;
    if (!isGone) shown.push(named);
  }
  for (const node of [...list.childNodes]) if (node.nodeType === Node.TEXT_NODE) node.remove();
  for (const [i, named] of shown.entries())
    if (i > 0) named.before(i === shown.length - 1 ? ' and ' : ', ');
  const line = list.closest('p');
  if (line !== null) line.hidden = shown.length === 0;
  const noun = line?.querySelector('[data-noun]');
  if (noun) noun.textContent = shown.length === 1 ? 'step' : 'steps';
}
