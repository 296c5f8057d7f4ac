import { type Signal, signalSchema } from '../../schemas/catalogue.ts';
import type { LinkedProcedure } from '../link/index.ts';
import type { Block, HazardPanel } from '../syntax/index.ts';
import type { Gathering } from './gather.ts';

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

/** The hazards of a job, each once where its words are the same. */
export const hazardsAtAGlance: Gathering<readonly HazardWords[]> = {
  sum: (parts) => once(parts.flat()),
  choose: (ways) => once(ways.flat()),
  block: (block, one) => (block.type === 'hazard' ? [hazardWords(block, one)] : undefined),
};

/** Most severe first; of one severity, in order of reading. */
export function bySeverity(hazards: readonly HazardWords[]): readonly HazardWords[] {
  return signalSchema.options.flatMap((signal) => hazards.filter((one) => one.signal === signal));
}

function once(hazards: readonly HazardWords[]): readonly HazardWords[] {
  const first = new Map<string, HazardWords>();
  for (const one of hazards) {
    const key = JSON.stringify([one.signal, one.hazard.trim(), one.harm.trim()]);
    if (!first.has(key)) first.set(key, one);
  }
  return [...first.values()];
}
