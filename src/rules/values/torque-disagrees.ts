import type { Place } from '../../../schemas/finding.ts';
import type { Connection, Fastener, Torque } from '../../catalogue/index.ts';
import type { LinkedProcedure } from '../../link/index.ts';
import { kindOf, parseQuantity, type Quantity } from '../../quantity/index.ts';
import { saidTorques, type TorqueAction } from '../reading/torque-actions.ts';
import { agrees } from '../reading/torque-figures.ts';
import { namedTorques } from '../reading/torques-named.ts';
import type { Draft, Rule } from '../rule.ts';
import { related } from '../telling/related.ts';
import { the, thing } from '../wording/thing.ts';

export const rule: Rule = {
  id: 'torque-disagrees',
  family: 'values',
  level: 'error',
  *check(examined): Generator<Draft> {
    for (const { id: procedure, one } of examined.subjects) {
      const told = new Set<number>();
      const found = [...saidTorques(one).flatMap(disagreeing), ...namedWrongly(one)];
      for (const { place, fastener, torque } of found) {
        if (told.has(place.start.offset)) continue;
        told.add(place.start.offset);
        const written = examined.text(place.file).slice(place.start.offset, place.end.offset);
        const known = torque.written.join(', ');
        yield {
          place,
          procedure,
          item: fastener.id,
          message: `${written} stands here, but the catalogue gives ${the(thing(fastener.id, fastener))} ${known}`,
          data: { written, catalogue: [...torque.written], byDefault: torque.byDefault },
          related: [
            related(
              torque.place,
              torque.byDefault ? 'the default torque of the manual' : 'the torque of the catalogue',
            ),
          ],
          help: 'Take the figure out, since the sheet prints that of the catalogue, or correct the one that is wrong.',
        };
      }
    }
  },
};

interface Disagreement {
  readonly place: Place;
  readonly fastener: Fastener | Connection;
  readonly torque: Torque;
}

function disagreeing({ action, fastener, figures, beside }: TorqueAction): Disagreement[] {
  const { torque } = fastener;
  if (torque === undefined) return [];
  const value = action.value === undefined ? undefined : parseQuantity(action.value.text).value;
  const attribute =
    action.value !== undefined && isTorque(value) && !agrees(value, torque)
      ? [{ place: action.value.place, fastener, torque }]
      : [];
  const known = beside.flatMap((other) => other.torque ?? []);
  const isUnclear = beside.some((other) => other.torque === undefined);
  const words = figures
    .filter(
      ({ quantity }) => !isUnclear && ![torque, ...known].some((one) => agrees(quantity, one)),
    )
    .map(({ place }) => ({ place, fastener, torque }));
  return [...attribute, ...words];
}

function namedWrongly(one: LinkedProcedure): Disagreement[] {
  return [...namedTorques(one)].flatMap(({ figure, place, items }) => {
    const [item] = items;
    if (item === undefined || items.some(({ torque }) => agrees(figure.quantity, torque)))
      return [];
    return [{ place, fastener: item, torque: item.torque }];
  });
}

const isTorque = (quantity: Quantity | undefined): quantity is Quantity =>
  quantity !== undefined && kindOf(quantity) === 'torque';
