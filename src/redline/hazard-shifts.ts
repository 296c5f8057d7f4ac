import { type Signal, signalSchema } from '../../schemas/catalogue.ts';
import { type Shift, sides } from './fact.ts';
import { samePlainWords } from './plain-words.ts';

export interface HazardSaid {
  readonly signal: Signal;
  readonly hazard: string;
  readonly harm: string;
  readonly avoid: string;
}

/** How a hazard is told otherwise: its signal word by rank, and what it says of the hazard, the harm and how to avoid it. */
export function hazardShifts(before: HazardSaid, after: HazardSaid): readonly Shift[] {
  const parts = (['hazard', 'harm', 'avoid'] as const).flatMap((field): readonly Shift[] =>
    samePlainWords(before[field], after[field])
      ? []
      : [{ kind: 'hazard-words', field, ...sides(before[field], after[field]) }],
  );
  if (before.signal === after.signal) return parts;
  const rank = (signal: Signal): number => signalSchema.options.indexOf(signal);
  const direction = rank(after.signal) > rank(before.signal) ? 'lower' : 'higher';
  return [
    { kind: 'hazard-signal', before: before.signal, after: after.signal, direction },
    ...parts,
  ];
}
