import { sentencesOf } from '../reading/sentences.ts';
import { stepTexts } from '../reading/step-texts.ts';
import type { Draft, Rule } from '../rule.ts';
import { mostActions } from '../wording/limits.ts';

export const rule: Rule = {
  id: 'several-actions',
  family: 'words',
  level: 'note',
  *check(examined): Generator<Draft> {
    for (const { id: procedure, one } of examined.subjects) {
      for (const { text } of stepTexts(one)) {
        const actions = text.stretches.filter(({ kind }) => kind === 'action');
        if (actions.length <= mostActions) continue;
        for (const { start, end } of sentencesOf(text)) {
          const count = actions.filter((one) => one.start >= start && one.start < end).length;
          if (count <= mostActions) continue;
          yield {
            place: text.placeOf(start, end),
            procedure,
            message: `This sentence has ${count} actions; more than ${mostActions} are easily lost`,
            data: { count, most: mostActions },
            help: 'Give each action a sentence or a step of its own.',
          };
        }
      }
    }
  },
};
