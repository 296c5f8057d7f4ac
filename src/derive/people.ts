import type { Gathering } from './gather.ts';

/** The most people that any step takes, or that the front matter asks for; at least one. */
export const people: Gathering<number> = {
  sum: (parts) => parts.reduce((most, part) => Math.max(most, part), 1),
  choose: (ways) => Math.max(1, ...ways),
  front: (one) => one.procedure.front.people,
  step: (step) => step.people,
};
