import type { Circuit } from '../catalogue/index.ts';
import { fluidEvents, type LinkedManual, type LinkedProcedure } from '../link/index.ts';
import { followLevel } from '../mixture/index.ts';
import {
  canonical,
  computedAmount,
  convert,
  mainUnit,
  printByPolicy,
  type Quantity,
  type UnitPolicy,
} from '../quantity/index.ts';

/** Fluid that a job lets out and that must be collected. */
export interface Waste {
  readonly circuit: Circuit;
  /** "about 38 L (10 US gal)"; undefined where nothing says how much, as when it is let out round after round. */
  readonly volume: string | undefined;
}

/** What is to be collected in a job, in order of work. Where ways differ it is the most. */
export function wasteOf(
  one: LinkedProcedure,
  manual: LinkedManual,
  policy: UnitPolicy,
): readonly Waste[] {
  const events = fluidEvents(one, manual);
  const circuits = new Set(
    events.flatMap(({ circuit, does }) => (does === 'fill' ? [] : [circuit])),
  );
  return [...circuits].flatMap((circuit): Waste[] => {
    const own = events.filter((event) => event.circuit === circuit);
    const high = circuit.capacity && canonical(circuit.capacity).high?.value;
    const isKnown = high !== undefined && own.every(({ isUnclear }) => !isUnclear);
    if (!isKnown || circuit.capacity === undefined) return [{ circuit, volume: undefined }];
    const flows = own.map(({ does, amount, sureness }) => ({
      does,
      amount: amount && { volume: canonical(amount).high?.value ?? 0, slack: 0 },
      sureness,
    }));
    const start = one.procedure.front.starts[circuit.id] === 'drained' ? high : 0;
    const { collected } = followLevel(flows, { low: high, high, slack: 0 }, start);
    if (collected === 0) return [];
    if (collected === undefined) return [{ circuit, volume: undefined }];
    return [{ circuit, volume: `about ${volumeOf(collected, circuit.capacity, policy)}` }];
  });
}

/** The capacity as it is written, and less or more than that to two digits; in the unit of the capacity and the second one of the manual. */
function volumeOf(litres: number, capacity: Quantity, policy: UnitPolicy): string {
  if (capacity.form === 'single' && canonical(capacity).high?.value === litres)
    return printByPolicy(capacity, policy);
  const rounded = Number(litres.toPrecision(2));
  const secondDigit = 10 ** (Math.floor(Math.log10(rounded)) - 1);
  const amount = computedAmount(rounded, Math.max(secondDigit, computedAmount(rounded).step));
  const { value } = convert({ form: 'single', unit: 'L', amount }, mainUnit(capacity));
  return printByPolicy(value ?? { form: 'single', unit: 'L', amount }, policy);
}
