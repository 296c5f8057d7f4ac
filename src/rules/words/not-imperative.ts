import type { Step } from '../../syntax/index.ts';
import { sentencesOf } from '../reading/sentences.ts';
import { stepTexts } from '../reading/step-texts.ts';
import type { Draft, Rule } from '../rule.ts';
import { statement } from '../wording/mood.ts';

export const rule: Rule = {
  id: 'not-imperative',
  family: 'words',
  level: 'note',
  *check(examined): Generator<Draft> {
    for (const { id: procedure, one } of examined.subjects) {
      let last: Step | undefined;
      for (const { step, text } of stepTexts(one)) {
        if (step === last) continue;
        last = step;
        const [first] = sentencesOf(text);
        if (first === undefined) continue;
        const words = statement(
          text.text.slice(first.start, Math.min(first.end, first.start + 300)),
        );
        if (words === undefined) continue;
        const said = words.replace(/\s+/g, ' ');
        yield {
          place: text.placeOf(first.start, first.start + words.length),
          procedure,
          message: `“${said}” describes the work and does not say to do it`,
          data: { words: said },
          help: 'Begin the step with the command: “Remove …”, “Tighten …”.',
        };
      }
    }
  },
};
