import type { Fix } from '../../../schemas/finding.ts';
import type { RunningText } from '../reading/running-text.ts';
import type { Untracked } from '../reading/untracked.ts';
import { untrackedWork } from '../reading/untracked-work.ts';
import type { Draft, Examined, Rule } from '../rule.ts';
import { code } from '../wording/lists.ts';

export const rule: Rule = {
  id: 'untracked-action',
  family: 'words',
  level: 'warning',
  *check(examined): Generator<Draft> {
    for (const { id: procedure, one } of examined.subjects) {
      for (const { text, found, isAside } of untrackedWork(one, examined.linked)) {
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
