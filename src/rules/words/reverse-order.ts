import { actionsIn, within } from '../../link/index.ts';
import type { Section, Step } from '../../syntax/index.ts';
import { placedProse } from '../reading/placed-prose.ts';
import { type RunningText, runningTexts } from '../reading/running-text.ts';
import { sentencesOf } from '../reading/sentences.ts';
import type { Draft, Rule } from '../rule.ts';
import { code } from '../wording/lists.ts';
import { reversePhrase } from '../wording/reverse.ts';

export const rule: Rule = {
  id: 'reverse-order',
  family: 'words',
  level: 'error',
  *check(examined): Generator<Draft> {
    for (const { id, one } of examined.subjects) {
      for (const { prose, section, step } of placedProse(one)) {
        for (const text of runningTexts(prose, one)) yield* draftsIn(text, id, section, step);
      }
    }
  },
};

function* draftsIn(
  text: RunningText,
  procedure: string,
  section: Section,
  step: Step | undefined,
): Generator<Draft> {
  for (const { start, end } of sentencesOf(text)) {
    const phrase = reversePhrase(text.text.slice(start, end));
    if (phrase === undefined || isWrittenOut(section, step)) continue;
    yield {
      place: text.placeOf(start + phrase.start, start + phrase.end),
      procedure,
      message: `“${phrase.words}” leaves the steps to the reader, and they cannot be counted`,
      data: { words: phrase.words },
      help: `Write the steps out, or write ${code('::reverse{of=removal}')} with the id of the section to turn round.`,
    };
  }
}

/** Beside a sentence in a step, its own actions are the steps; beside one outside, those of the section. */
function isWrittenOut(section: Section, step: Step | undefined): boolean {
  const blocks = step?.blocks ?? section.blocks;
  if ([...within(section.blocks)].some(({ type }) => type === 'reverse')) return true;
  return actionsIn(blocks).length > 0;
}
