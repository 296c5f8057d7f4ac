import { hazardWords } from '../derive/index.ts';
import { type LinkedProcedure, within } from '../link/index.ts';
import type { HazardPanel } from '../syntax/index.ts';
import type { HazardSaid } from './hazard-shifts.ts';
import type { Names } from './names.ts';
import { onOneLine, plainWords } from './plain-words.ts';

/** What a panel says, its own words or those of its entry, each on one line. */
export function panelWords(panel: HazardPanel, one: LinkedProcedure): HazardSaid {
  const { signal, hazard, harm, avoid } = hazardWords(panel, one);
  const own = [...within(panel.blocks)].flatMap((block) =>
    block.type === 'prose' ? [plainWords(block.node)] : [],
  );
  return {
    signal,
    hazard: onOneLine(hazard),
    harm: onOneLine(harm),
    avoid: onOneLine(own.length > 0 ? own.join(' ') : avoid),
  };
}

/** The same for panels that tell the same hazard: their entry's id, else the words that name the hazard. */
export function panelKey(panel: HazardPanel, one: LinkedProcedure, names: Names): string {
  if (panel.of !== undefined) return `of ${names.item(panel.of.id)}`;
  const { hazard } = panelWords(panel, one);
  return `says ${hazard.toLowerCase()}`;
}
