import type { Replacement, Fix as SarifFix } from 'sarif';
import type { Edit, Fix } from '../../../schemas/finding.ts';
import { withLineEndsOf } from '../line-ends.ts';
import { messageOf } from './message-of.ts';
import type { Places } from './places.ts';

/** A fix or suggestion as replacements (3.55), file by file; undefined where a text is not known. */
export function fixOf({ kind, title, edits }: Fix, places: Places): SarifFix | undefined {
  const byFile = Map.groupBy(edits, ({ file }) => file);
  const artifactChanges = [...byFile].flatMap(([file, ofFile]) => {
    const replacements = ofFile
      .toSorted((a, b) => a.start - b.start || a.end - b.end)
      .flatMap((edit) => replacementOf(edit, places));
    const isWhole = replacements.length === ofFile.length;
    return isWhole ? [{ artifactLocation: places.artifact(file), replacements }] : [];
  });
  if (artifactChanges.length < byFile.size) return undefined;
  return { description: messageOf(title), artifactChanges, properties: { kind } };
}

function replacementOf(edit: Edit, places: Places): Replacement[] {
  const { file, start, end } = edit;
  const place = places.between(file, start, end);
  if (place === undefined) return [];
  const { text: inserted } = withLineEndsOf(places.text(file), edit);
  return [
    {
      deletedRegion: places.region(place),
      ...(inserted !== '' && { insertedContent: { text: inserted } }),
    },
  ];
}
