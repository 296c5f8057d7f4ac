import type { Catalogue } from '../catalogue/index.ts';
import { itemName, removalTies, type TiedGroup, tiedGroups } from '../derive/index.ts';
import type { MachinePage, MachinePicture } from './book.ts';
import { removalPicture, tieLegend } from './removal-picture.ts';
import { toHtml } from './to-html.ts';

/** The pictures of what holds what on a machine, and what their lines mean. */
export function machinePictures(machine: Catalogue): Pick<MachinePage, 'pictures' | 'legendHtml'> {
  const groups = tiedGroups(removalTies(machine));
  const kinds = new Set(groups.flatMap(({ ties }) => ties.map(({ kind }) => kind)));
  return {
    pictures: groups.map(picture),
    legendHtml: groups.length === 0 ? '' : toHtml([tieLegend(kinds)]),
  };
}

function picture(group: TiedGroup): MachinePicture {
  const { part } = group;
  const name = itemName(group.centre);
  return {
    title: part === undefined ? name : `${name}, picture ${part.number} of ${part.of}`,
    svgHtml: toHtml([removalPicture(group)]),
    note: noteOn(group),
  };
}

function noteOn({ part, leftOut }: TiedGroup): string | undefined {
  if (part === undefined) return undefined;
  const lost = leftOut === 0 ? '' : ` ${leftOut} ties between the pictures are not drawn.`;
  return `One of ${part.of} pictures; together they show all that is tied together here.${lost}`;
}
