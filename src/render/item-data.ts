import type { FluidData, ItemData, TorqueData, ValueData } from '../../schemas/procedure-parts.ts';
import type { Circuit } from '../catalogue/index.ts';
import { itemName, stageTexts } from '../derive/index.ts';
import type { LinkedProcedure } from '../link/index.ts';
import {
  parseQuantity,
  printByPolicy,
  type Quantity,
  type TorqueSpec,
  toUcum,
  type UnitPolicy,
} from '../quantity/index.ts';
import type { Ref } from '../syntax/index.ts';

/** An entry of the catalogue, for programs. */
export function itemData(ref: Pick<Ref, 'id'>, one: LinkedProcedure): ItemData {
  const item = one.item(ref.id);
  return { id: ref.id, name: item === undefined ? ref.id : itemName(item) };
}

/** A value for people and for programs. */
export function valueData(quantity: Quantity, policy: UnitPolicy): ValueData {
  return { words: plain(printByPolicy(quantity, policy)), quantity: toUcum(quantity) };
}

/** The same of a value of the text, which perhaps cannot be read. */
export function writtenData(text: string, policy: UnitPolicy): ValueData {
  const { value } = parseQuantity(text);
  return value === undefined ? { words: text } : valueData(value, policy);
}

/** How something is tightened; `threads` is the state of the threads for which that holds. */
export function torqueData(
  spec: TorqueSpec,
  policy: UnitPolicy,
  threads?: TorqueData['threads'],
): TorqueData {
  const texts = stageTexts({ spec }, policy);
  const stages = spec.stages.map((stage, i): TorqueData['stages'][number] => {
    const words = plain(texts[i] ?? '');
    switch (stage.does) {
      case 'tighten':
        return { does: stage.does, words, to: toUcum(stage.to) };
      case 'tighten-and-turn':
        return { does: stage.does, words, to: toUcum(stage.to), by: toUcum(stage.by) };
      default:
        return { does: stage.does, words, by: toUcum(stage.by) };
    }
  });
  return threads === undefined ? { stages } : { stages, threads };
}

/** What a circuit holds. `amount` is what the text says where that is not all of it. */
export function fluidData(circuit: Circuit, policy: UnitPolicy, amount?: string): FluidData {
  const { capacity } = circuit;
  const whole = capacity === undefined ? {} : { amount: valueData(capacity, policy) };
  const mix = circuit.mix.map(({ name, share }) => ({ name, share: toUcum(share) }));
  return {
    specification: circuit.fluid,
    ...(amount === undefined ? whole : { amount: writtenData(amount, policy) }),
    ...(mix.length === 0 ? {} : { mix }),
  };
}

/** Blanks that hold together on paper only stand in the way of a program. */
const plain = (text: string): string => text.replaceAll('\u00a0', ' ');
