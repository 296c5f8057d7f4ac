import { printAsWritten } from '../../quantity/index.ts';
import { type FluidStory, fluidStories } from '../reading/fluid-stories.ts';
import { fillsTooMuch } from '../reading/volumes-said.ts';
import type { Draft, Rule } from '../rule.ts';
import { outsBefore } from '../telling/outs-before.ts';
import { related } from '../telling/related.ts';
import { code } from '../wording/lists.ts';
import { the, thing } from '../wording/thing.ts';
import { volumeText } from '../wording/volume.ts';

export const rule: Rule = {
  id: 'fill-over',
  family: 'values',
  level: 'error',
  *check(examined): Generator<Draft> {
    for (const story of fluidStories(examined)) {
      for (const fault of story.faults) {
        const event = story.events[fault.flow];
        if (event === undefined || event.does === 'lose') continue;
        if (fault.fault === 'over-capacity') yield overCapacity(story, fault.flow);
        if (fault.fault === 'over-out') yield overOut(story, fault.flow, fault.out);
      }
    }
    for (const { id: procedure, one } of examined.subjects) {
      for (const { circuit, written, place } of fillsTooMuch(one))
        yield { procedure, place, ...tooMuch(circuit, written, 'goes into') };
    }
  },
};

function tooMuch(
  circuit: FluidStory['circuit'],
  amount: string | undefined,
  does: string,
): Omit<Draft, 'place'> {
  const capacity = capacityText(circuit);
  return {
    item: circuit.id,
    message: `${amount} ${does} ${the(thing(circuit.id, circuit))}, which holds ${capacity}`,
    data: { amount: amount ?? null, capacity },
    related: [related(circuit.placeOf('capacity'), 'the capacity')],
    help: 'Correct the amount here, or the capacity in the catalogue.',
  };
}

function overCapacity({ procedure, circuit, events }: FluidStory, flow: number): Draft {
  const event = events[flow];
  const amount = event?.action.amount;
  const does = event?.does === 'drain' ? 'is to come out of' : 'goes into';
  return {
    place: event?.performed === undefined ? (amount?.place ?? circuit.place) : event.place,
    procedure,
    ...tooMuch(circuit, amount?.text, does),
  };
}

function overOut(story: FluidStory, flow: number, out: number): Draft {
  const { procedure, circuit, events } = story;
  const event = events[flow];
  const amount = event?.action.amount;
  const fluid = the(thing(circuit.id, circuit));
  const gone =
    out === 0
      ? 'nothing is missing from it'
      : `only ${volumeText(out, circuit.capacity)} is missing`;
  return {
    place: event?.performed === undefined ? (amount?.place ?? circuit.place) : event.place,
    procedure,
    item: circuit.id,
    message: `${amount?.text} goes into ${fluid}, but ${gone}`,
    data: { amount: amount?.text ?? null, out },
    related: outsBefore(story, flow),
    help: `Correct the amount, or leave ${code('amount')} out, which means up to the mark.`,
  };
}

function capacityText({ capacity }: FluidStory['circuit']): string {
  if (capacity === undefined) return 'an unknown amount';
  return printAsWritten(capacity).replaceAll('\u00a0', ' ');
}
