import { type Signal, signalSchema } from '../../schemas/catalogue.ts';
import type { Space, VariantSet } from '../applicability/index.ts';
import type { LinkedProcedure } from '../link/index.ts';
import type { Block, HazardPanel } from '../syntax/index.ts';
import type { Gathering } from './gather.ts';
import { machinesMeant } from './machines-meant.ts';

/** A hazard as a panel says it, whether written out or taken from the catalogue. */
export interface HazardWords {
  readonly signal: Signal;
  readonly hazard: string;
  readonly harm: string;
  /** How to avoid it, as plain text of the catalogue; empty where the panel's blocks say it. */
  readonly avoid: string;
  readonly blocks: readonly Block[];
  /** Whose text the blocks are. */
  readonly one: LinkedProcedure;
}

/** What a panel says. Where its entry is unknown, the id stands for the hazard. */
export function hazardWords(panel: HazardPanel, one: LinkedProcedure): HazardWords {
  const found = panel.of === undefined ? undefined : one.item(panel.of);
  const entry = found?.kind === 'hazard' ? found : undefined;
  return {
    signal: panel.signal ?? entry?.signal ?? 'warning',
    hazard: panel.hazard?.text ?? entry?.hazard ?? panel.of?.id ?? '',
    harm: panel.harm?.text ?? entry?.harm ?? '',
    avoid: panel.blocks.length > 0 ? '' : (entry?.avoid ?? ''),
    blocks: panel.blocks,
    one,
  };
}

/** A hazard of a job, with the machines on which it is met. */
export interface MetHazard {
  readonly words: HazardWords;
  readonly under: VariantSet;
}

/** The hazards of a job, each once where its words are the same. */
export function hazardsAtAGlance(space: Space): Gathering<readonly MetHazard[]> {
  const join = (parts: readonly (readonly MetHazard[])[]) => once(space, parts.flat());
  return {
    sum: join,
    choose: join,
    block: (block, one, under) => {
      if (block.type !== 'hazard') return undefined;
      const entry = block.of && one.item(block.of);
      return [{ words: hazardWords(block, one), under: machinesMeant(space, entry?.when, under) }];
    },
    performed: (hazards, _at, under) =>
      hazards.map(({ words, under: own }) => ({ words, under: space.and(own, under) })),
  };
}

/** Most severe first; of one severity, in order of reading. */
export function bySeverity(hazards: readonly MetHazard[]): readonly MetHazard[] {
  return signalSchema.options.flatMap((signal) =>
    hazards.filter(({ words }) => words.signal === signal),
  );
}

/** The first of those with the same words stands for all; what is met on no machine is left out. */
function once(space: Space, hazards: readonly MetHazard[]): readonly MetHazard[] {
  const first = new Map<string, MetHazard>();
  for (const { words, under } of hazards) {
    if (under === space.none) continue;
    const key = JSON.stringify([words.signal, words.hazard.trim(), words.harm.trim()]);
    const known = first.get(key);
    first.set(
      key,
      known === undefined ? { words, under } : { ...known, under: space.or(known.under, under) },
    );
  }
  return [...first.values()];
}
