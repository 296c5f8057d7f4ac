import type { Element } from 'hast';
import { h } from 'hastscript';
import type { Circuit } from '../catalogue/index.ts';
import {
  boundValues,
  type FluidFact,
  freezingWords,
  itemName,
  mixVolumes,
  valuesInText,
  writtenText,
} from '../derive/index.ts';
import { parseQuantity, piecesByPolicy, printByPolicy } from '../quantity/index.ts';
import { itemMarkup } from './action-markup.ts';
import { onlyFor } from './only-for.ts';
import type { SheetContext } from './sheet-context.ts';
import { shownWhen } from './shown-when.ts';
import { twoUnits } from './two-units.ts';

/** The fluid of a step: what it is, how much goes out or in, the mix worked out, where the old one goes. */
export function fluidBox(fact: FluidFact, context: SheetContext): Element {
  const { circuit, verb } = fact;
  const name = itemName(circuit);
  const isNew = verb !== 'drain' || fact.isShown;
  const isOld = verb !== 'fill' || fact.isShown;
  const label = { role: 'group', ariaLabel: `Fluid: ${name}`, dataItem: circuit.id };
  return h('div.box.fluid', { ...label, ...shownWhen(context.presence.when(fact.when)) }, [
    ...onlyFor(fact.when, context),
    h('p.box-title', [
      verb === undefined ? 'Fluid: ' : verb === 'drain' ? 'Out: ' : 'In: ',
      itemMarkup(circuit, name, context),
    ]),
    ...amount(fact, context),
    ...(isNew ? [h('p.detail', fluidPoured(fact))] : []),
    ...(fact.isShown ? capacity(fact, context) : []),
    ...(isNew && fact.poured.length === 0
      ? [...mix(fact, context), ...freezing(circuit, context)]
      : []),
    ...(isNew ? never(circuit, context) : []),
    ...(isOld && circuit.dispose !== undefined
      ? [
          h('p.dispose', [
            ...(isNew ? ['Old fluid: '] : []),
            valuesInText(circuit.dispose, context.policy),
          ]),
        ]
      : []),
  ]);
}

/** One part of the mix, where a step pours in that alone to correct it. */
function fluidPoured({ circuit, poured }: FluidFact): string {
  if (poured.length === 0) return boundValues(circuit.fluid);
  return poured
    .map((item) => [itemName(item), item.specification].filter(Boolean).join(', '))
    .map(boundValues)
    .join('; ');
}

function amount({ circuit, amount }: FluidFact, { policy }: SheetContext): Element[] {
  if (amount !== undefined) return [h('p.value', writtenText(amount, policy))];
  const { capacity } = circuit;
  return capacity === undefined ? [] : [h('p.value', twoUnits(piecesByPolicy(capacity, policy)))];
}

/** Said apart only where the box gives another amount above it. */
function capacity({ circuit, amount }: FluidFact, { policy }: SheetContext): Element[] {
  if (amount === undefined || circuit.capacity === undefined) return [];
  return [h('p.detail', `Capacity: ${printByPolicy(circuit.capacity, policy)}`)];
}

/** For the amount that is poured in here; where the box only shows the circuit, or it drains, for the whole. */
function mix({ circuit, verb, amount }: FluidFact, { policy }: SheetContext): Element[] {
  const poured = verb === 'fill' && amount !== undefined ? parseQuantity(amount).value : undefined;
  const parts = mixVolumes(circuit, policy, poured);
  if (parts.length === 0) return [];
  const rows = parts.map(({ name, share, volume }) =>
    h('tr', [h('th', { scope: 'row' }, name), h('td', share), h('td', volume)]),
  );
  const head = ['Mix', 'Share', 'Volume'].map((text) => h('th', { scope: 'col' }, text));
  return [h('table.mix', [h('thead', h('tr', head)), h('tbody', rows)])];
}

function freezing(circuit: Circuit, { policy }: SheetContext): Element[] {
  const words = freezingWords(circuit, policy);
  if (words === undefined) return [];
  return [h('p.freezes', words.point), h('p.source', words.source)];
}

function never(circuit: Circuit, context: SheetContext): Element[] {
  const ids = circuit['never-with'];
  if (ids.length === 0) return [];
  const names = ids.map((id) => {
    const other = context.one.item(id);
    return other === undefined ? id : itemMarkup(other, itemName(other), context);
  });
  const listed = names.flatMap((name, i) =>
    i === 0 ? [name] : [i === names.length - 1 ? ' or ' : ', ', name],
  );
  return [h('p.never', ['Never mix with ', ...listed])];
}
