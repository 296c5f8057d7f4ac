import type { Space, VariantSet } from '../applicability/index.ts';
import type { Perform, Step } from '../syntax/index.ts';
import { minutesOf } from './duration.ts';
import type { Gathering } from './gather.ts';

/** Work that takes more than one person. */
export interface Crewed {
  readonly people: number;
  readonly at: WorkPlace;
  /** The machines on which it does. */
  readonly under: VariantSet;
  /** How long; `isWhole` is false where some of it has no time. */
  readonly minutes: number;
  readonly isWhole: boolean;
}

/** The step, or where another procedure is performed in which such work is. */
export interface WorkPlace {
  readonly in: Step | Perform;
  /** Where it is in a job whose steps are printed there. */
  readonly inside: { readonly perform: Perform; readonly at: WorkPlace } | undefined;
}

/** The people that a job takes. */
export interface Crew {
  /** The most that any step takes, or that the front matter asks for; at least one. */
  readonly people: number;
  /** Where it takes more than one, in order of work. */
  readonly crewed: readonly Crewed[];
}

/** Who is needed where. Work of a performed procedure counts at the step that performs it, or in it where its steps stand there. */
export function crew(space: Space): Gathering<Crew> {
  const join = (parts: readonly Crew[], minutes: (a: number, b: number) => number): Crew => ({
    people: parts.reduce((most, part) => Math.max(most, part.people), 1),
    crewed: together(
      space,
      parts.flatMap((part) => part.crewed),
      minutes,
    ),
  });
  return {
    sum: (parts) => join(parts, (a, b) => a + b),
    choose: (ways) => join(ways, Math.max),
    front: ({ procedure }) => ({ people: procedure.front.people ?? 1, crewed: [] }),
    step: (step, _one, under) => {
      const { people } = step;
      if (people < 2 || under === space.none) return undefined;
      const minutes = step.time && minutesOf(step.time.text);
      const isWhole = minutes !== undefined;
      const at = { in: step, inside: undefined };
      return { people, crewed: [{ people, at, under, minutes: minutes ?? 0, isWhole }] };
    },
    performed: ({ people, crewed }, outer, under, perform) => ({
      people: under === space.none ? 1 : people,
      crewed: together(
        space,
        crewed
          .map((one) => {
            const inside = perform.inPlace ? { perform, at: one.at } : undefined;
            return { ...one, at: { in: outer, inside }, under: space.and(one.under, under) };
          })
          .filter((one) => one.under !== space.none),
        (a, b) => a + b,
      ),
    }),
  };
}

/** What is done at one place by as many people, on whichever machines, is one. */
function together(
  space: Space,
  all: readonly Crewed[],
  minutes: (a: number, b: number) => number,
): readonly Crewed[] {
  const joined: Crewed[] = [];
  for (const one of all) {
    const index = joined.findIndex(({ at, people }) => people === one.people && isSame(at, one.at));
    const known = joined[index];
    if (known === undefined) joined.push(one);
    else {
      joined[index] = {
        ...known,
        under: space.or(known.under, one.under),
        minutes: minutes(known.minutes, one.minutes),
        isWhole: known.isWhole && one.isWhole,
      };
    }
  }
  return joined;
}

function isSame(a: WorkPlace, b: WorkPlace): boolean {
  if (a.in !== b.in || a.inside?.perform !== b.inside?.perform) return false;
  return a.inside === undefined || b.inside === undefined || isSame(a.inside.at, b.inside.at);
}
