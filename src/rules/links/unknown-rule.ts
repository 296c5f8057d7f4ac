import type { Place } from '../../../schemas/finding.ts';
import { locator, nearest } from '../../source/index.ts';
import type { Draft, Examined, Rule } from '../rule.ts';
import { replaceWord } from '../telling/replace-word.ts';
import { unchangeable } from '../unchangeable.ts';
import { code } from '../wording/lists.ts';

export const rule: Rule = {
  id: 'unknown-rule',
  family: 'links',
  level: 'warning',
  *check(examined): Generator<Draft> {
    const known = examined.ruleIds;
    for (const id of Object.keys(examined.linked.manual.settings.rules)) {
      const place = keyPlace(examined, id);
      if (unchangeable.has(id)) {
        yield {
          place,
          message: `The level of ${code(id)} cannot be changed: a file that cannot be read is not checked at all`,
          data: { id },
          help: 'Take the line out.',
        };
      } else if (!known.includes(id)) {
        const near = nearest(id, known);
        yield {
          place,
          message: `There is no rule ${code(id)}, so this line changes nothing`,
          data: { id, ...(near !== undefined && { near }) },
          help: near === undefined ? 'Take the line out.' : `Perhaps ${code(near)} is meant.`,
          fix: replaceWord(examined, place, 'suggestion', id, near),
        };
      }
    }
  },
};

/** The key stands before its value, on the same line. */
function keyPlace(examined: Examined, id: string): Place {
  const value = examined.linked.manual.placeOf(`rules.${id}`);
  const text = examined.text(value.file);
  const start = text.lastIndexOf(id, value.start.offset);
  return start < 0 ? value : locator(value.file, text).place(start, start + id.length);
}
