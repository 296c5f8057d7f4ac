import type { ElementContent } from 'hast';
import { h } from 'hastscript';
import type { LinkedManual, LinkedProcedure } from '../link/index.ts';
import { breakLongWords } from './long-words.ts';
import { manualContext } from './manual-context.ts';
import { sheetBody, sheetContext } from './sheet-body.ts';
import { standingMarkup } from './standing-text.ts';

/**
 * The work of a sheet by itself, for a page that is none of ours: the manual's safety text, then the phases with
 * hazards, steps and margin boxes. `base` leads from that page to the root of the published manual.
 */
export function sheetMarkup(
  one: LinkedProcedure,
  manual: LinkedManual,
  base: string,
): ElementContent[] {
  const { settings, policy, placeOf } = manual.manual;
  const safety = standingMarkup(settings.safety, placeOf('safety'), policy);
  const body = sheetBody(sheetContext(one, manualContext(manual, base)));
  return breakLongWords([
    ...(safety.length > 0
      ? [h('section.standing', { ariaLabel: 'Safety instructions' }, safety)]
      : []),
    h('div.work', body),
  ]);
}
