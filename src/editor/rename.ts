import type { Edit } from '../../schemas/finding.ts';
import { idSchema } from '../../schemas/id.ts';
import type { Inspection } from '../report/index.ts';
import { applyEdits } from '../report/index.ts';
import { slugOf } from '../syntax/index.ts';
import type { Desk } from './desk.ts';
import { mentionAt, mentionsOf } from './mentions.ts';
import { headingEdit } from './rename-heading.ts';
import { taken, unfit, unfitId, unread } from './rename-refusals.ts';

/** The edits of a rename, or why there is none, in a sentence. */
export type Renamed = { readonly edits: readonly Edit[] } | { readonly refused: string };

/** What can be renamed at an offset: the stretch of it, and what stands there by now. */
export function renamable(
  desk: Desk,
  file: string,
  offset: number,
): { readonly from: number; readonly to: number; readonly text: string } | { refused: string } {
  const mention = mentionAt(desk, file, offset);
  if (mention === undefined)
    return { refused: 'No id of an item, procedure, section, step or variant stands here.' };
  const refused = unfit(mention);
  if (refused !== undefined) return { refused };
  const { place, form, named } = mention;
  if (form === 'heading') {
    const { from, to, text } = headingEdit(desk.textOf(file) ?? '', place);
    return { from, to, text };
  }
  return { from: place.start.offset, to: place.end.offset, text: named.id };
}

/**
 * Gives a thing another id, in every file that names it. Refused where the id is not one, is taken, or where
 * the check would find more afterwards than before.
 */
export function rename(desk: Desk, file: string, offset: number, name: string): Renamed {
  const mention = mentionAt(desk, file, offset);
  if (mention === undefined) return { refused: 'Nothing that can be renamed stands here.' };
  const { named } = mention;
  const words = name.trim();
  const id = named.kind === 'section' ? slugOf(words) : words;
  const refused =
    unfit(mention) ?? unfitId(named, id, words) ?? taken(desk, named, id) ?? unread(desk);
  if (refused !== undefined) return { refused };
  if (id === named.id && named.kind !== 'section') return { edits: [] };
  const edits = mentionsOf(desk, named).flatMap(({ place, form }): Edit[] => {
    if (form === 'path') return [];
    if (form === 'id')
      return [{ file: place.file, start: place.start.offset, end: place.end.offset, text: id }];
    const { from, to } = headingEdit(desk.textOf(place.file) ?? '', place);
    return [{ file: place.file, start: from, end: to, text: headingFor(words) }];
  });
  return worse(desk, edits) ?? { edits };
}

/** Tries it: no rule may find more afterwards. */
function worse(desk: Desk, edits: readonly Edit[]): { refused: string } | undefined {
  const { files, inspection } = desk;
  const byFile = Map.groupBy(edits, ({ file }) => file);
  const texts = files.texts.map((one) => {
    const own = byFile.get(one.path);
    return own === undefined ? one : { ...one, text: applyEdits(one.text, own) };
  });
  const counts = (rule: string, found: Inspection['report']): number =>
    found.findings.filter((finding) => finding.rule === rule).length;
  const { report } = desk.tryOut({ ...files, texts });
  const more = report.findings.find(
    ({ rule }) => counts(rule, report) > counts(rule, inspection.report),
  );
  return (
    more && {
      refused: `Afterwards the check would find more than now, in ${more.file} line ${more.start.line}: ${more.message}.`,
    }
  );
}

/** An id that is typed where words belong becomes words: removal-of-hood is "Removal of hood". */
function headingFor(words: string): string {
  if (!idSchema.safeParse(words).success) return words;
  const plain = words.replaceAll('-', ' ');
  return plain.charAt(0).toUpperCase() + plain.slice(1);
}
