import type { LinkedProcedure } from '../../link/index.ts';
import type { RunningText, Stretch } from '../reading/running-text.ts';
import { longestSentence, type Sentence, sentencesOf } from '../reading/sentences.ts';
import { stepTexts } from '../reading/step-texts.ts';
import { torquesIn } from '../reading/torque-figures.ts';
import type { Draft, Rule } from '../rule.ts';
import type { Phrase } from '../wording/reverse.ts';
import { vagueTightening } from '../wording/vague.ts';

export const rule: Rule = {
  id: 'vague-torque',
  family: 'words',
  level: 'error',
  *check(examined): Generator<Draft> {
    for (const { id: procedure, one } of examined.subjects) {
      for (const { text } of stepTexts(one)) {
        for (const sentence of sentencesOf(text)) {
          const found = vagueIn(text, sentence, one);
          if (found === undefined) continue;
          const { start, end, words } = found.phrase;
          yield {
            place: text.placeOf(sentence.start + start, sentence.start + end),
            procedure,
            item: found.item,
            message: `“${words}” does not say how tight`,
            data: { words },
            help: 'Give the fastener a torque in the catalogue and write `:torque{item=…}`; where the trade has no figure, give it a tightness (hand-tight, snug or until-drag).',
          };
        }
      }
    }
  },
};

interface Vague {
  readonly phrase: Phrase;
  readonly item: string | undefined;
}

function vagueIn(text: RunningText, sentence: Sentence, one: LinkedProcedure): Vague | undefined {
  const { start, end } = sentence;
  if (end - start > longestSentence) return undefined;
  const words = text.text.slice(start, end);
  const actions = text.stretches.filter(
    (stretch) => isTightening(stretch) && stretch.start < end && stretch.end > start,
  );
  const phrase = vagueTightening(
    words,
    actions.map((action) => Math.max(0, action.start - start)),
  );
  if (phrase === undefined || torquesIn(words).length > 0) return undefined;
  if (actions.some((stretch) => hasFigure(stretch, one))) return undefined;
  return { phrase, item: actions[0]?.action?.item.id };
}

const isTightening = ({ action }: Stretch): boolean =>
  action !== undefined && ['torque', 'tighten', 'install', 'replace'].includes(action.verb);

/** Where the catalogue says how tight, the sheet prints it beside the words. */
function hasFigure({ action }: Stretch, one: LinkedProcedure): boolean {
  if (action === undefined) return false;
  if (action.value !== undefined) return true;
  const item = one.item(action.item);
  return item?.kind === 'fastener' && (item.torque !== undefined || item.tightness !== undefined);
}
