import { allActions, type LinkedManual, type LinkedProcedure } from '../../link/index.ts';
import { otherCases, otherTimes } from '../wording/work-outside.ts';
import { commandsIn } from './commands.ts';
import { itemFinder } from './item-names.ts';
import { onceFor } from './once-for.ts';
import type { RunningText } from './running-text.ts';
import { sentencesOf } from './sentences.ts';
import { stepTexts } from './step-texts.ts';
import { textsAside } from './texts-aside.ts';
import { textsOutside } from './texts-outside.ts';
import { type Untracked, untrackedIn, type Worked, type WorkReader } from './untracked.ts';

/** Words that command work without a directive, in a step or beside it. */
export interface UntrackedWork {
  readonly text: RunningText;
  readonly found: Untracked;
  /** Those that are counted with it: of its step, or of the paragraph. */
  readonly actions: Worked['actions'];
  /** True where it stands beside the work: the directive belongs into a step, not around the words. */
  readonly isAside: boolean;
}

/** All untracked work of a procedure. `read` finds commands and entries; without it only what is sure counts. */
export function untrackedWork(
  one: LinkedProcedure,
  manual: LinkedManual,
  read: WorkReader = { find: itemFinder(one.catalogue), commands: commandsIn },
): UntrackedWork[] {
  const isPromised = ({ item }: Untracked): boolean =>
    item !== undefined && Object.hasOwn(one.procedure.front.starts, item.id);
  const foundIn = (worked: Worked): UntrackedWork[] =>
    untrackedIn(worked, read).map((found) => ({
      text: worked.text,
      found,
      actions: worked.actions,
      isAside: false,
    }));
  const outside = [...textsOutside(one)].flatMap((worked) =>
    foundIn(worked).filter(
      ({ text, found }) => !worked.isPlain || isSurely(text, found, otherTimes),
    ),
  );
  const aside = [...textsAside(one, manual)]
    .flatMap(foundIn)
    .filter(({ text, found }) => isSurely(text, found, otherCases) && !isPromised(found))
    .map((one) => ({ ...one, isAside: true }));
  const isSaidOver = ({ found }: UntrackedWork): boolean =>
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
