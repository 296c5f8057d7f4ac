import { allBlocks } from '../../link/index.ts';
import type { HazardPanel } from '../../syntax/index.ts';
import type { Draft, Rule } from '../rule.ts';
import { allOf, code } from '../wording/lists.ts';

export const rule: Rule = {
  id: 'hazard-incomplete',
  family: 'safety',
  level: 'error',
  *check(examined): Generator<Draft> {
    for (const { id: procedure, one } of examined.subjects) {
      for (const block of allBlocks(one.procedure)) {
        if (block.type !== 'hazard' || block.of !== undefined || block.signal === undefined)
          continue;
        const missing = missingParts(block);
        if (missing.length === 0) continue;
        yield {
          place: block.place,
          procedure,
          message: `This ${block.signal.toUpperCase()} does not say ${allOf(missing.map((part) => part.says))}`,
          data: { signal: block.signal, missing: missing.map((part) => part.name) },
          help: `Add ${allOf(missing.map((part) => part.write))}.`,
        };
      }
    }
  },
};

interface PanelPart {
  readonly name: string;
  readonly says: string;
  readonly write: string;
}

const hazard: PanelPart = {
  name: 'hazard',
  says: 'what can hurt',
  write: `${code('hazard="…"')} with what can hurt, such as “The lid falls shut”`,
};
const damage: PanelPart = {
  name: 'hazard',
  says: 'what can be damaged',
  write: `${code('hazard="…"')} with what can be damaged`,
};
const harm: PanelPart = {
  name: 'harm',
  says: 'what it does to people',
  write: `${code('harm="…"')} with what it does to them, such as “Crushed fingers”`,
};
const avoid: PanelPart = {
  name: 'avoid',
  says: 'how to avoid it',
  write: 'a sentence that says how to avoid it',
};

/** The three parts of a hazard message by ANSI Z535.6; a NOTICE is about no injury and needs no harm. */
function missingParts(panel: HazardPanel): PanelPart[] {
  const isNotice = panel.signal === 'notice';
  return [
    ...(isEmpty(panel.hazard?.text) ? [isNotice ? damage : hazard] : []),
    ...(isEmpty(panel.harm?.text) && !isNotice ? [harm] : []),
    ...(panel.blocks.length === 0 ? [avoid] : []),
  ];
}

const isEmpty = (text: string | undefined): boolean => text === undefined || text.trim() === '';
