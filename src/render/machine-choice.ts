import { type MachineChoice, machineCondition, parseCondition } from '../applicability/index.ts';
import type { ManualModel } from '../catalogue/index.ts';
import { attributeName } from '../derive/index.ts';

/** What the machines of a manual differ in, in its order, and what no machine meets. */
export function machineChoice({ space, settings }: ManualModel): MachineChoice {
  return {
    attributes: space.attributes.map(({ id, values }) => ({
      id,
      name: attributeName(settings.variants, id),
      values,
    })),
    never: settings.never
      .map((text) => machineCondition(parseCondition(text).value, space))
      .filter((condition) => condition !== undefined),
  };
}
