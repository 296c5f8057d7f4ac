import type { MachineChoice, MachineCondition } from '../../src/applicability/machine-condition.ts';

/** What is known of a machine: a value for some of the attributes. */
export type Choice = ReadonlyMap<string, string>;

/** A condition that every machine meets. */
export const always: MachineCondition = ['&'];

/** After so many cases a search ends, and what it was asked counts as possible: too much is shown, never too little. */
const mostCases = 600;

/** True, false, or undefined where what is known does not decide it. */
export function truth(condition: MachineCondition, choice: Choice): boolean | undefined {
  switch (condition[0]) {
    case '=': {
      const [, attribute, ...values] = condition;
      const value = choice.get(attribute);
      return value === undefined ? undefined : values.includes(value);
    }
    case '?':
      return undefined;
    case '!': {
      const inner = truth(condition[1], choice);
      return inner === undefined ? undefined : !inner;
    }
    default: {
      const [kind, ...parts] = condition;
      const decisive = kind === '|';
      let isOpen = false;
      for (const part of parts) {
        const value = truth(part, choice);
        if (value === decisive) return decisive;
        isOpen ||= value === undefined;
      }
      return isOpen ? undefined : !decisive;
    }
  }
}

/** The machines of a manual, as far as a condition can be held against them. */
export class Machines {
  readonly attributes: MachineChoice['attributes'];
  readonly #bounds: MachineCondition;
  readonly #found = new Map<string, boolean>();

  /** `within` are the machines that a page is for. A manual that allows no machine is taken to allow all. */
  constructor({ attributes, never }: MachineChoice, within: MachineCondition = always) {
    this.attributes = attributes;
    this.#bounds = ['&', within, ...never.map((one) => ['!', one] as const)];
    if (!this.isPossible(always, new Map())) this.#bounds = within;
    this.#found.clear();
  }

  /** Whether there is a machine such as is known that meets a condition. */
  isPossible(condition: MachineCondition, choice: Choice): boolean {
    const key = JSON.stringify([condition, [...choice]]);
    const known = this.#found.get(key);
    if (known !== undefined) return known;
    const whole: MachineCondition = ['&', condition, this.#bounds];
    const found = this.#search(whole, new Map(choice), { left: mostCases });
    this.#found.set(key, found);
    return found;
  }

  /** Whether every machine such as is known meets a condition. */
  isCertain(condition: MachineCondition, choice: Choice): boolean {
    return !this.isPossible(['!', condition], choice);
  }

  /** The values of an attribute that are left to choose beside what is known of the others. */
  valuesLeft(id: string, choice: Choice): readonly string[] {
    const values = this.attributes.find((attribute) => attribute.id === id)?.values ?? [];
    return values.filter((value) => this.isPossible(always, new Map(choice).set(id, value)));
  }

  /** What is known with what follows from it: an attribute with only one value left has that one. */
  settled(choice: Choice): Choice {
    const settled = new Map<string, string>();
    for (const { id } of this.attributes) {
      const chosen = choice.get(id);
      const left = chosen === undefined ? this.valuesLeft(id, choice) : [chosen];
      const [only, ...others] = left;
      if (only !== undefined && others.length === 0) settled.set(id, only);
    }
    return settled;
  }

  /** As much of what was asked for as there are machines for, in the order of the manual. */
  allowed(asked: Choice): Choice {
    const choice = new Map<string, string>();
    for (const { id } of this.attributes) {
      const value = asked.get(id);
      if (value !== undefined && this.valuesLeft(id, choice).includes(value)) choice.set(id, value);
    }
    return choice;
  }

  /** Tries the values of one undecided attribute after the other. What no attribute decides counts as possible. */
  #search(whole: MachineCondition, choice: Map<string, string>, cases: { left: number }): boolean {
    const value = truth(whole, choice);
    if (value !== undefined) return value;
    cases.left -= 1;
    const id = cases.left < 0 ? undefined : undecidedIn(whole, choice);
    const attribute = this.attributes.find((one) => one.id === id);
    if (attribute === undefined) return true;
    const isFound = attribute.values.some((one) =>
      this.#search(whole, choice.set(attribute.id, one), cases),
    );
    choice.delete(attribute.id);
    return isFound;
  }
}

/** The first attribute that could decide more of a condition. */
function undecidedIn(condition: MachineCondition, choice: Choice): string | undefined {
  if (truth(condition, choice) !== undefined) return undefined;
  switch (condition[0]) {
    case '=':
      return condition[1];
    case '?':
      return undefined;
    case '!':
      return undecidedIn(condition[1], choice);
    default: {
      const [, ...parts] = condition;
      for (const part of parts) {
        const id = undecidedIn(part, choice);
        if (id !== undefined) return id;
      }
      return undefined;
    }
  }
}
