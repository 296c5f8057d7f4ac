import type { LinkedProcedure } from '../../link/index.ts';
import { actionsIn, allBlocks } from '../../link/index.ts';
import type { Action, Prose } from '../../syntax/index.ts';
import { type PlacedProse, placedProse } from '../reading/placed-prose.ts';
import { plainWords, type RunningText, runningTexts } from '../reading/running-text.ts';
import { longestSentence, type Sentence, sentencesOf } from '../reading/sentences.ts';
import type { Draft, Rule } from '../rule.ts';
import { backwards, criterion, type Jump, type JumpPhrase, jumpPhrase } from '../wording/jumps.ts';
import { code } from '../wording/lists.ts';

export const rule: Rule = {
  id: 'jump-in-words',
  family: 'words',
  level: 'warning',
  *check(examined): Generator<Draft> {
    for (const { id: procedure, one } of examined.subjects) {
      for (const placed of placedProse(one)) {
        for (const text of runningTexts(placed.prose, one)) {
          for (const sentence of sentencesOf(text)) {
            const phrase = phraseIn(text, sentence);
            if (phrase === undefined || isSound(phrase, text, sentence, placed, one)) continue;
            const { start } = sentence;
            yield {
              place: text.placeOf(start + phrase.start, start + phrase.end),
              procedure,
              message: `“${phrase.words}” ${says[phrase.jump]}`,
              data: { words: phrase.words, jump: phrase.jump },
              help: help[phrase.jump](procedure),
            };
          }
        }
      }
    }
  },
};

const says: Readonly<Record<Jump, string>> = {
  again: 'asks for work that no step here counts',
  go: 'sends the reader to a step by a typed number, and what is left out or done twice is not counted',
  stop: 'ends the job in words, but more steps follow, and they are counted as done',
  order: 'leaves the steps to the reader, and they cannot be counted',
};

const help: Readonly<Record<Jump, (procedure: string) => string>> = {
  again: (procedure) =>
    `Write the steps out. Of a thing with ${code('each:')} in the catalogue an action without ${code('each=')} counts every one; a whole section is done again with ${code(`::perform{procedure=${procedure} part=…}`)}.`,
  go: () =>
    `Put what is done only in one case into ${code(':::if[…]')}; to have a check done again, link to its step: ${code('[step](#id)')}.`,
  stop: () =>
    `Put the steps that follow into ${code(':::if[…]')}, so that the job ends with everything home either way.`,
  order: () => 'Write a step for each thing, in that order.',
};

function phraseIn(text: RunningText, { start, end }: Sentence): JumpPhrase | undefined {
  if (end - start > longestSentence) return undefined;
  return jumpPhrase(plainWords(text).slice(start, end));
}

function isSound(
  { jump, isOfOthers }: JumpPhrase,
  text: RunningText,
  sentence: Sentence,
  { prose, section, step, isInBranch }: PlacedProse,
  one: LinkedProcedure,
): boolean {
  const words = text.text.slice(sentence.start, sentence.end);
  switch (jump) {
    case 'again':
      if (isOfOthers) return [...actionsIn(step?.blocks ?? [prose])].some(countsAll);
      return hasLink(text, sentence) && criterion.test(words);
    case 'go':
      return hasLink(text, sentence) || (isInBranch && backwards.test(words));
    case 'stop':
      return !isFollowed(prose, one);
    case 'order':
      return actionsIn(step?.blocks ?? section.blocks).length > 0;
  }
}

const hasLink = ({ stretches }: RunningText, { start, end }: Sentence): boolean =>
  stretches.some((one) => one.kind === 'link' && one.start >= start && one.start < end);

/** Whether an action is done to every piece that there is, so that nothing is left for the others. */
const countsAll = ({ qty, each }: Action): boolean => qty === undefined && each.length === 0;

function isFollowed({ place }: Prose, { procedure }: LinkedProcedure): boolean {
  for (const block of allBlocks(procedure)) {
    if (block.type === 'reverse' && block.place.start.offset >= place.end.offset) return true;
    if (
      block.type === 'steps' &&
      block.steps.some((step) => step.place.start.offset >= place.end.offset)
    )
      return true;
  }
  return false;
}
