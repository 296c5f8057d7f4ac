import type { Fix } from '../../../schemas/finding.ts';
import { itemFinder } from '../reading/item-names.ts';
import type { RunningText } from '../reading/running-text.ts';
import { sentencesOf } from '../reading/sentences.ts';
import { stepTexts } from '../reading/step-texts.ts';
import { textsOutside } from '../reading/texts-outside.ts';
import { type Untracked, untrackedIn } from '../reading/untracked.ts';
import type { Draft, Examined, Rule } from '../rule.ts';
import { code } from '../wording/lists.ts';
import { otherTimes } from '../wording/work-outside.ts';

export const rule: Rule = {
  id: 'untracked-action',
  family: 'words',
  level: 'warning',
  *check(examined): Generator<Draft> {
    for (const [procedure, one] of examined.linked.procedures) {
      const find = itemFinder(one.catalogue);
      for (const worked of [...stepTexts(one), ...textsOutside(one)]) {
        for (const found of untrackedIn(worked, find)) {
          if ('isPlain' in worked && worked.isPlain && !isSurely(worked.text, found)) continue;
          const place = worked.text.placeOf(found.start, found.end);
          const fix = wrap(examined, worked.text, found);
          yield {
            place,
            procedure,
            item: found.item?.id,
            message: `“${oneLine(found.words)}” is work, but no directive counts it`,
            data: { words: oneLine(found.words), verb: found.verb },
            help: help(found),
            fix,
          };
        }
      }
    }
  },
};

/** A plain paragraph commands work where a sentence begins with the verb, names an entry, and means now. */
function isSurely(text: RunningText, { start, item }: Untracked): boolean {
  const sentence = sentencesOf(text).find((one) => one.start <= start && start < one.end);
  if (sentence === undefined || item === undefined || sentence.start !== start) return false;
  return !otherTimes.test(text.text.slice(sentence.start, sentence.end));
}

function help({ words, item, verb }: Untracked): string {
  const line = `:${verb}[${oneLine(words)}]{item=${item?.id ?? '…'}${verb === 'set' ? ' to=…' : ''}}`;
  return item === undefined
    ? `Write ${code(line)} with the id of the thing, and add the thing to the catalogue if it is not there.`
    : `Write ${code(line)}.`;
}

/** Puts the directive around the words, where they stand in the file as they are read. */
function wrap(
  examined: Examined,
  text: RunningText,
  { start, end, words, item, verb }: Untracked,
): Fix | undefined {
  if (item === undefined || verb === 'set' || /[[\]{}:\\]/.test(words)) return undefined;
  const { file, start: from, end: to } = text.placeOf(start, end);
  if (examined.text(file).slice(from.offset, to.offset) !== words) return undefined;
  return {
    kind: 'suggestion',
    title: `Count it with ${verb}`,
    edits: [
      { file, start: from.offset, end: to.offset, text: `:${verb}[${words}]{item=${item.id}}` },
    ],
  };
}

const oneLine = (words: string): string => words.replace(/\s+/g, ' ').trim();
