import type { Choice, Machines } from './machines.ts';

/**
 * The selects of a page, one for each thing in which the machines differ. They stand in the page from the
 * start, so that nothing moves when they wake up. `choose` is called with each new choice.
 */
export class Chooser {
  readonly #machines: Machines;
  readonly #selects = new Map<string, HTMLSelectElement>();
  #choice: Choice = new Map();

  constructor(element: HTMLElement, machines: Machines, choose: (choice: Choice) => void) {
    this.#machines = machines;
    for (const select of element.querySelectorAll<HTMLSelectElement>('[data-attribute]')) {
      const id = select.dataset.attribute ?? '';
      this.#selects.set(id, select);
      select.addEventListener('change', () => {
        const next = new Map(this.#choice);
        if (select.value === '') next.delete(id);
        else next.set(id, select.value);
        choose(machines.allowed(next));
      });
    }
    element.inert = false;
  }

  /** What no machine beside the choice has cannot be chosen; what follows from it is shown as chosen. */
  show(choice: Choice): void {
    this.#choice = choice;
    const settled = this.#machines.settled(choice);
    for (const [id, select] of this.#selects) {
      const left = this.#machines.valuesLeft(id, choice);
      const follows = settled.has(id) && !choice.has(id);
      for (const option of select.options)
        option.disabled = option.value === '' ? follows : !left.includes(option.value);
      select.value = settled.get(id) ?? '';
    }
  }
}
