import type { Circuit } from '../../catalogue/index.ts';
import {
  type FluidEvent,
  fluidEvents,
  type LinkedManual,
  type LinkedProcedure,
} from '../../link/index.ts';
import { type Flow, followLevel, type LevelFault } from '../../mixture/index.ts';
import { canonical, type Quantity } from '../../quantity/index.ts';
import type { Examined } from '../rule.ts';
import { onceFor } from './once-for.ts';

/** How one circuit is emptied and filled in one procedure, and what of it does not add up. Volumes in litres. */
export interface FluidStory {
  readonly procedure: string;
  readonly circuit: Circuit;
  readonly events: readonly FluidEvent[];
  readonly faults: readonly LevelFault[];
}

/** The stories of procedures, each fault once: where a performed procedure has it alone, it is told there. */
export const fluidStories: (examined: Examined) => readonly FluidStory[] = onceFor(
  ({ subjects, expanded }) => {
    const told = storiesIn(expanded);
    return subjects.flatMap(({ expanded: one }) =>
      told.of(one).map((story) => ({
        ...story,
        faults: story.faults.filter(({ fault, flow }) => {
          const event = story.events[flow];
          return event !== undefined && !(event.performed !== undefined && told.has(fault, event));
        }),
      })),
    );
  },
);

const storiesIn: (manual: LinkedManual) => Stories = onceFor((manual) => new Stories(manual));

/** The stories of single procedures as they are asked for, with all faults. */
class Stories {
  readonly #manual: LinkedManual;
  readonly #known = new Map<LinkedProcedure, readonly FluidStory[]>();

  constructor(manual: LinkedManual) {
    this.#manual = manual;
  }

  of(one: LinkedProcedure): readonly FluidStory[] {
    const stories = this.#known.get(one) ?? storiesOf(one, fluidEvents(one, this.#manual));
    this.#known.set(one, stories);
    return stories;
  }

  /** Whether the procedure in whose text an event stands has a fault there by itself. */
  has(fault: string, { action }: FluidEvent): boolean {
    const owner = this.#manual.outlines.byFile.get(action.place.file);
    const one = owner && this.#manual.procedures.get(owner.id);
    if (one === undefined) return false;
    return this.of(one).some(({ events, faults }) =>
      faults.some((other) => {
        const event = events[other.flow];
        return other.fault === fault && event?.action === action && event.performed === undefined;
      }),
    );
  }
}

function storiesOf(one: LinkedProcedure, all: readonly FluidEvent[]): FluidStory[] {
  return [...new Set(all.map(({ circuit }) => circuit))].flatMap((circuit) => {
    const events = all.filter((event) => event.circuit === circuit);
    const { capacity } = circuit;
    if (capacity === undefined || events.some(isDoubtful)) return [];
    const { low, high } = canonical(capacity);
    if (high === undefined) return [];
    const holds = { low: (low ?? high).value, high: high.value, slack: high.step / 2 };
    const start = one.procedure.front.starts[circuit.id];
    const missing = start === 'drained' ? holds.high : start === 'part-drained' ? undefined : 0;
    const { faults } = followLevel(events.map(flowOf), holds, missing);
    return [{ procedure: one.procedure.id, circuit, events, faults }];
  });
}

const isDoubtful = ({ amount, isUnclear }: FluidEvent): boolean =>
  isUnclear || (amount !== undefined && canonical(amount).kind !== 'volume');

/** A range or a tolerance is taken at its middle, with its width as slack; a limit at its end. */
function flowOf({ does, amount, sureness }: FluidEvent): Flow {
  return { does, amount: amount && middleOf(amount), sureness };
}

function middleOf(amount: Quantity): NonNullable<Flow['amount']> {
  const { low, high } = canonical(amount);
  const [bottom, top] = [(low ?? high)?.value ?? 0, (high ?? low)?.value ?? 0];
  const step = (high ?? low)?.step ?? 0;
  return { volume: (bottom + top) / 2, slack: (top - bottom) / 2 + step / 2 };
}
