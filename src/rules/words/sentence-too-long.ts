import { sentencesOf } from '../reading/sentences.ts';
import { stepTexts } from '../reading/step-texts.ts';
import { wordsIn } from '../reading/word-count.ts';
import type { Draft, Rule } from '../rule.ts';
import { mostWords } from '../wording/limits.ts';

export const rule: Rule = {
  id: 'sentence-too-long',
  family: 'words',
  level: 'note',
  *check(examined): Generator<Draft> {
    for (const { id: procedure, one } of examined.subjects) {
      for (const { text } of stepTexts(one)) {
        for (const sentence of sentencesOf(text)) {
          const words = wordsIn(text, sentence);
          if (words <= mostWords) continue;
          yield {
            place: text.placeOf(sentence.start, sentence.end),
            procedure,
            message: `This sentence has ${words} words; in a step, ${mostWords} are the most that read well`,
            data: { words, most: mostWords },
            help: 'Make two sentences of it, with one thing to do in each, or two steps.',
          };
        }
      }
    }
  },
};
