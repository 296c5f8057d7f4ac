import type { Edit } from '../../schemas/finding.ts';
import type { Proposal, UntrackedReport } from '../../schemas/untracked.ts';
import type { LinkedManual } from '../link/index.ts';
import { compareText } from '../source/index.ts';
import { insertEntries } from './insert-entries.ts';
import { type Lacking, lackingEntries } from './lacking-entries.ts';
import { Proposer } from './proposer.ts';
import { sightingsIn } from './sighting.ts';
import { soundEdits } from './sound-edits.ts';

/**
 * All words of a manual that act without a directive, each with the directive that would count them, and the entries
 * that the catalogue lacks for that. What has an edit can be written as it stands. Sorted by file and place.
 */
export function untrackedReport(
  linked: LinkedManual,
  textOf: (file: string) => string,
): UntrackedReport {
  const sightings = [...linked.procedures.values()]
    .flatMap((one) => sightingsIn(one, linked))
    .sort(
      (a, b) =>
        compareText(a.place.file, b.place.file) || a.place.start.offset - b.place.start.offset,
    );
  const lacking = lackingEntries(sightings, linked);
  const additions = additionsFor(lacking, textOf);
  const written = new Set(additions.map(({ file }) => file));
  const entryOf = new Map(
    lacking.flatMap((entry) => entry.sightings.map((sighting) => [sighting, entry] as const)),
  );
  const proposer = new Proposer(linked, textOf);
  const isWritten = ({ file, isWhole }: Lacking): boolean => isWhole && written.has(file);
  const proposals = sightings.map((sighting) =>
    proposer.propose(sighting, entryOf.get(sighting), isWritten),
  );
  return {
    proposals: withSoundEdits(proposals, additions, textOf),
    entries: lacking.map(({ kind: _kind, sightings: _sightings, ...entry }) => ({
      ...entry,
      isWhole: entry.isWhole && written.has(entry.file),
    })),
    additions: [...additions],
  };
}

function additionsFor(
  lacking: readonly Lacking[],
  textOf: (file: string) => string,
): readonly Edit[] {
  const whole = lacking.filter(({ isWhole }) => isWhole);
  const files = [...new Set(whole.map(({ file }) => file))].sort(compareText);
  return files.flatMap((file) => {
    const own = whole.filter((entry) => entry.file === file);
    return insertEntries(file, textOf(file), own) ?? [];
  });
}

function withSoundEdits(
  proposals: readonly Proposal[],
  additions: readonly Edit[],
  textOf: (file: string) => string,
): Proposal[] {
  const edits = proposals.flatMap(({ edit }) => edit ?? []);
  const sound = new Set(
    [...new Set(edits.map(({ file }) => file))].flatMap((file) =>
      soundEdits(
        file,
        textOf(file),
        additions.filter((one) => one.file === file),
        edits.filter((one) => one.file === file),
      ),
    ),
  );
  return proposals.map((proposal): Proposal => {
    const { edit, ...rest } = proposal;
    return edit === undefined || sound.has(edit) ? proposal : { ...rest, why: 'signs' };
  });
}
