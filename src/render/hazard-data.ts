import type { HazardData } from '../../schemas/procedure-parts.ts';
import { hazardWords, valuesInText } from '../derive/index.ts';
import type { HazardPanel } from '../syntax/index.ts';
import { caseData } from './case-data.ts';
import { avoidance } from './hazard-panel.ts';
import { plainText } from './plain-text.ts';
import type { SheetContext } from './sheet-context.ts';

/** A safety message for programs: its three parts as plain words. */
export function hazardData(panel: HazardPanel, context: SheetContext): HazardData {
  const { one, manual, policy } = context;
  const words = hazardWords(panel, one);
  const entry = panel.of && one.item(panel.of)?.when;
  const when = caseData([panel.when, entry && { condition: entry }], manual);
  return {
    signal: words.signal,
    hazard: valuesInText(words.hazard, policy),
    harm: valuesInText(words.harm, policy),
    avoid: plainText(avoidance(words, context)),
    ...(when === undefined ? {} : { when }),
  };
}
