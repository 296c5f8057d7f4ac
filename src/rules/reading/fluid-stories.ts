import type { Circuit } from '../../catalogue/index.ts';
import { type FluidEvent, fluidEvents, type LinkedProcedure } from '../../link/index.ts';
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

/** The stories of all procedures, each fault once: where a performed procedure has it alone, it is told there. */
export const fluidStories: (examined: Examined) => readonly FluidStory[] = onceFor((examined) => {
  const stories = [...examined.expanded.procedures.values()].flatMap((one) =>
    storiesOf(one, fluidEvents(one, examined.expanded)),
  );
  const own = new Set(
    stories.flatMap(({ events, faults }) =>
      faults.flatMap(({ fault, flow }) => {
        const event = events[flow];
        return event === undefined || event.performed !== undefined ? [] : [keyOf(fault, event)];
      }),
    ),
  );
  return stories.map((story) => ({
    ...story,
    faults: story.faults.filter(({ fault, flow }) => {
      const event = story.events[flow];
      return (
        event !== undefined && (event.performed === undefined || !own.has(keyOf(fault, event)))
      );
    }),
  }));
});

const keyOf = (fault: string, { action }: FluidEvent): string =>
  `${fault} ${action.place.file} ${action.place.start.offset}`;

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
