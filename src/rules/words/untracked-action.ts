import type { Fix } from '../../../schemas/finding.ts';
import { allActions, type LinkedManual, type LinkedProcedure } from '../../link/index.ts';
import { itemFinder } from '../reading/item-names.ts';
import { onceFor } from '../reading/once-for.ts';
import type { RunningText } from '../reading/running-text.ts';
import { sentencesOf } from '../reading/sentences.ts';
import { stepTexts } from '../reading/step-texts.ts';
import { textsAside } from '../reading/texts-aside.ts';
import { textsOutside } from '../reading/texts-outside.ts';
import { type Untracked, untrackedIn, type Worked } from '../reading/untracked.ts';
import type { Draft, Examined, Rule } from '../rule.ts';
import { code } from '../wording/lists.ts';
import { otherCases, otherTimes } from '../wording/work-outside.ts';

export const rule: Rule = {
  id: 'untracked-action',
  family: 'words',
  level: 'warning',
  *check(examined): Generator<Draft> {
    for (const [procedure, one] of examined.linked.procedures) {
      for (const { text, found, isAside } of untrackedOf(one, examined.linked)) {
        const place = text.placeOf(found.start, found.end);
        yield {
          place,
          procedure,
          item: found.item?.id,
          message: `“${oneLine(found.words)}” is work, but no directive counts it`,
          data: { words: oneLine(found.words), verb: found.verb },
          help: isAside ? `Make it a step of its own: ${line(found)}.` : help(found),
          fix: isAside ? undefined : wrap(examined, text, found),
        };
      }
    }
  },
};

interface FoundIn {
  readonly text: RunningText;
  readonly found: Untracked;
  /** True where it stands beside the work: the directive belongs into a step, not around the words. */
  readonly isAside: boolean;
}

function untrackedOf(one: LinkedProcedure, manual: LinkedManual): FoundIn[] {
  const find = itemFinder(one.catalogue);
  const isPromised = ({ item }: Untracked): boolean =>
    item !== undefined && Object.hasOwn(one.procedure.front.starts, item.id);
  const foundIn = (worked: Worked): FoundIn[] =>
    untrackedIn(worked, find).map((found) => ({ text: worked.text, found, isAside: false }));
  const outside = [...textsOutside(one)].flatMap((worked) =>
    foundIn(worked).filter(
      ({ text, found }) => !worked.isPlain || isSurely(text, found, otherTimes),
    ),
  );
  const aside = [...textsAside(one, manual)]
    .flatMap(foundIn)
    .filter(({ text, found }) => isSurely(text, found, otherCases) && !isPromised(found))
    .map((one) => ({ ...one, isAside: true }));
  const isSaidOver = ({ found }: FoundIn): boolean =>
    found.verb === 'isolate' &&
    /^lock/i.test(found.words) &&
    isolatedIn(one).has(found.item?.id ?? '');
  return [...stepTexts(one).flatMap(foundIn), ...outside, ...aside].filter(
    (found) => !isSaidOver(found),
  );
}

/** To lock what a step has isolated is a part of that. */
const isolatedIn = onceFor(
  ({ procedure }: LinkedProcedure): ReadonlySet<string> =>
    new Set(
      [...allActions(procedure)].flatMap(({ verb, item }) => (verb === 'isolate' ? [item.id] : [])),
    ),
);

/** Words not marked as work command it where a sentence begins with the verb, names an entry, and means now. */
function isSurely(text: RunningText, { start, item }: Untracked, otherwise: RegExp): boolean {
  const sentence = sentencesOf(text).find((one) => one.start <= start && start < one.end);
  if (sentence === undefined || item === undefined || sentence.start !== start) return false;
  return !otherwise.test(text.text.slice(sentence.start, sentence.end));
}

const line = ({ words, item, verb }: Untracked): string =>
  code(`:${verb}[${oneLine(words)}]{item=${item?.id ?? '…'}${verb === 'set' ? ' to=…' : ''}}`);

function help(found: Untracked): string {
  return found.item === undefined
    ? `Write ${line(found)} with the id of the thing, and add the thing to the catalogue if it is not there.`
    : `Write ${line(found)}.`;
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
