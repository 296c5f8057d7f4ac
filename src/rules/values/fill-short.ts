import type { FluidEvent } from '../../link/index.ts';
import { canonical } from '../../quantity/index.ts';
import { type FluidStory, fluidStories } from '../reading/fluid-stories.ts';
import type { Draft, Rule } from '../rule.ts';
import { outsBefore } from '../telling/outs-before.ts';
import { code } from '../wording/lists.ts';
import { the, thing } from '../wording/thing.ts';
import { volumeText } from '../wording/volume.ts';

export const rule: Rule = {
  id: 'fill-short',
  family: 'values',
  level: 'warning',
  *check(examined): Generator<Draft> {
    for (const story of fluidStories(examined)) {
      const { procedure, circuit, events } = story;
      const front = examined.expanded.procedures.get(procedure)?.procedure.front;
      if (front?.leaves[circuit.id] !== undefined || isLeftDrained(story)) continue;
      for (const fault of story.faults) {
        const event = events[fault.flow];
        if (fault.fault !== 'short' || event === undefined) continue;
        yield {
          place: event.place,
          procedure,
          item: circuit.id,
          ...words(story, event, volumeText(fault.missing, circuit.capacity)),
          data: { missing: fault.missing },
          related: outsBefore(story, fault.flow),
        };
      }
    }
  },
};

function words(
  { circuit }: FluidStory,
  event: FluidEvent,
  missing: string,
): { message: string; help: string } {
  const fluid = the(thing(circuit.id, circuit));
  const topUp = code(`:fill[Top up to the mark]{item=${circuit.id}}`);
  return event.does === 'lose'
    ? {
        message: `About ${missing} of ${fluid} runs out, and nothing tops it up`,
        help: `Add ${topUp} after the line is closed, or take the ${code('loss')} out of the catalogue.`,
      }
    : {
        message: `${missing} less goes into ${fluid} than came out`,
        help: `Correct the amounts, or add ${topUp} after this step.`,
      };
}

/** Where the ledger itself finds the circuit not full at the end, and tells it. */
function isLeftDrained({ circuit, events }: FluidStory): boolean {
  let state: 'full' | 'part' | 'drained' = 'full';
  for (const { does, amount, action } of events) {
    if (does === 'drain') state = action.amount === undefined ? 'drained' : 'part';
    if (does === 'fill') state = state === 'drained' && isLess(amount, circuit) ? 'part' : 'full';
  }
  return state !== 'full';
}

function isLess(amount: FluidEvent['amount'], { capacity }: FluidStory['circuit']): boolean {
  if (amount === undefined || capacity === undefined) return false;
  const [most, least] = [canonical(amount).high, canonical(capacity).low];
  if (most === undefined || least === undefined) return false;
  return most.value + most.step / 2 < least.value - least.step / 2;
}
