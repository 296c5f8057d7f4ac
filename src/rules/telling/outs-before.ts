import type { Related } from '../../../schemas/finding.ts';
import { canonical } from '../../quantity/index.ts';
import type { FluidStory } from '../reading/fluid-stories.ts';
import { volumeText } from '../wording/volume.ts';
import { related } from './related.ts';

/** Where the fluid of a circuit went out before one of its flows, back to the last time that it was full. */
export function outsBefore({ circuit, events }: FluidStory, flow: number): Related[] {
  const before = events.slice(0, flow);
  const full = before.findLastIndex(({ does, amount }) => does === 'fill' && amount === undefined);
  return before.slice(full + 1).map(({ does, action, line, place }) => {
    const amount = line === undefined ? action.amount?.text : undefined;
    const words = {
      drain: amount === undefined ? 'all of it comes out here' : `${amount} comes out here`,
      lose: `about ${lossOf(line, circuit)} runs out here`,
      fill: `${amount} goes in here`,
    };
    return related(place, words[does]);
  });
}

function lossOf(
  line: FluidStory['events'][number]['line'],
  { capacity }: FluidStory['circuit'],
): string {
  const high = line?.loss && canonical(line.loss).high;
  return high === undefined ? 'some' : volumeText(high.value, line?.loss ?? capacity);
}
