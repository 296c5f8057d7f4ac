import type { Element } from 'hast';
import { h } from 'hastscript';
import {
  boundValues,
  type FluidFact,
  itemName,
  mixVolumes,
  valuesInText,
  writtenText,
} from '../derive/index.ts';
import { piecesByPolicy, printByPolicy } from '../quantity/index.ts';
import { itemMarkup } from './action-markup.ts';
import { onlyFor } from './only-for.ts';
import type { SheetContext } from './sheet-context.ts';
import { value } from './torque-box.ts';

/** The fluid of a step: what it is, how much goes out or in, the mix worked out, where the old one goes. */
export function fluidBox(fact: FluidFact, context: SheetContext): Element {
  const { circuit, verb } = fact;
  const name = itemName(circuit);
  const isNew = verb !== 'drain' || fact.isShown;
  const isOld = verb !== 'fill' || fact.isShown;
  const isWhole = fact.amount === undefined || fact.isShown;
  return h('div.box.fluid', { role: 'group', ariaLabel: `Fluid: ${name}`, dataItem: circuit.id }, [
    ...onlyFor(fact.when, context),
    h('p.box-title', [
      verb === undefined ? 'Fluid: ' : verb === 'drain' ? 'Out: ' : 'In: ',
      itemMarkup(circuit, name, context),
    ]),
    ...amount(fact, context),
    ...(isNew ? [h('p.detail', boundValues(circuit.fluid))] : []),
    ...(fact.isShown ? capacity(fact, context) : []),
    ...(isNew && isWhole ? mix(fact, context) : []),
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

function amount({ circuit, amount }: FluidFact, { policy }: SheetContext): Element[] {
  if (amount !== undefined) return [h('p.value', writtenText(amount, policy))];
  const { capacity } = circuit;
  return capacity === undefined ? [] : [h('p.value', value(piecesByPolicy(capacity, policy)))];
}

/** Said apart only where the box gives another amount above it. */
function capacity({ circuit, amount }: FluidFact, { policy }: SheetContext): Element[] {
  if (amount === undefined || circuit.capacity === undefined) return [];
  return [h('p.detail', `Capacity: ${printByPolicy(circuit.capacity, policy)}`)];
}

function mix({ circuit }: FluidFact, { policy }: SheetContext): Element[] {
  const parts = mixVolumes(circuit, policy);
  if (parts.length === 0) return [];
  const rows = parts.map(({ name, share, volume }) =>
    h('tr', [h('th', { scope: 'row' }, name), h('td', share), h('td', volume)]),
  );
  const head = ['Mix', 'Share', 'Volume'].map((text) => h('th', { scope: 'col' }, text));
  return [h('table.mix', [h('thead', h('tr', head)), h('tbody', rows)])];
}
