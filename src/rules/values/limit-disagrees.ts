import type { Item, Limit } from '../../catalogue/index.ts';
import { parseQuantity, sameQuantity } from '../../quantity/index.ts';
import { wrongLimitsSaid } from '../reading/limits-said.ts';
import { limitedReadings } from '../reading/readings.ts';
import type { Draft, Rule } from '../rule.ts';
import { related } from '../telling/related.ts';
import { code, oneOf } from '../wording/lists.ts';
import { the, thing } from '../wording/thing.ts';

export const rule: Rule = {
  id: 'limit-disagrees',
  family: 'values',
  level: 'error',
  *check(examined): Generator<Draft> {
    for (const { id: procedure, one } of examined.subjects) {
      for (const { action, item, limit } of limitedReadings(one)) {
        const said = action.value && parseQuantity(action.value.text).value;
        if (action.value === undefined || said === undefined) continue;
        const known = limit === undefined ? item.limits : [limit];
        if (known.some(({ quantity }) => sameQuantity(quantity, said))) continue;
        const { text, place } = action.value;
        yield { procedure, place, ...disagreement(item, text, known) };
      }
      for (const { reading, known, written, place } of wrongLimitsSaid(one))
        yield { procedure, place, ...disagreement(reading.item, written, known) };
    }
  },
};

const disagreement = (
  item: Item,
  written: string,
  known: readonly Limit[],
): Omit<Draft, 'place'> => ({
  item: item.id,
  message: `${written} stands here, but the catalogue gives ${the(thing(item.id, item))} ${oneOf(known.map(wordsOf))}`,
  data: { written, catalogue: known.map((one) => one.written) },
  related: known.map(({ place }) => related(place, 'the limit of the catalogue')),
  help: helpFor(known),
});

function helpFor(known: readonly Limit[]): string {
  const [only, ...others] = known;
  const instead =
    only?.name === undefined || others.length > 0
      ? 'Take the figure out, since the sheet prints that of the catalogue'
      : `Write ${code(`limit=${only.name}`)} alone, since the sheet prints the figure of the catalogue`;
  return `${instead}, or correct the one that is wrong. For another measurement, add a limit with a name of its own.`;
}

const wordsOf = ({ name, written }: Limit): string =>
  name === undefined ? written : `${name} ${written}`;
