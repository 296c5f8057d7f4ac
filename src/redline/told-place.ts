import type { Change, Redline, Side } from '../../schemas/redline.ts';

/** File and line of a change: where it stands now, or where it stood. */
export interface ToldPlace {
  readonly file: string;
  readonly line: number;
  /** It stood there; the text after has it no more. */
  readonly isOld: boolean;
}

export function placeOf({ places }: Change): ToldPlace | undefined {
  const { before, after } = places;
  const place = after ?? before;
  if (place === undefined) return undefined;
  return { file: place.file, line: place.start.line, isOld: after === undefined };
}

/** Which step a change is in, by its number now, or before where it is gone: "step 10", "under “Removal”"; undefined outside of the steps. */
export function stepWords({ step }: Change): string | undefined {
  if (step === undefined) return undefined;
  const number = step.after ?? step.before;
  if (number !== undefined) return `step ${number}`;
  return step.section === undefined ? 'at the start' : `under “${step.section}”`;
}

/** "replace-anvil, replace-radiator (through empty-coolant)"; empty where a change reaches nothing else. */
export function touchesWords({ touches }: Change): string {
  return touches
    .map(({ procedure, through }) =>
      through.length === 0 ? procedure : `${procedure} (through ${through.join(', ')})`,
    )
    .join(', ');
}

/** As many procedures are named; of the others it is told how many they are. */
const mostNamed = 6;

/** "performed by replace-anvil, replace-radiator"; empty for a procedure that no other performs. */
export function performedWords({
  performedBy,
}: Pick<Redline['procedures'][number], 'performedBy'>): string {
  if (performedBy.length === 0) return '';
  const rest = performedBy.length - mostNamed;
  const more = rest > 0 ? ` and ${rest} more` : '';
  return `performed by ${performedBy.slice(0, mostNamed).join(', ')}${more}`;
}

/** The same of the procedure in whose own text a change stands. */
export function performersWords(change: Change, { procedures }: Redline): string {
  const own = procedures.find(({ id }) => id === change.procedure);
  return own === undefined || change.touches.length > 0 ? '' : performedWords(own);
}

/** "v1.2 (3f2a1c9, 2026-09-01)", "the working folder". */
export function sideWords({ revision, commit, date }: Side): string {
  if (revision === undefined) return 'the working folder';
  const name = commit === undefined || commit === revision ? [] : [commit];
  const more = [...name, ...(date === undefined ? [] : [date])];
  return more.length === 0 ? revision : `${revision} (${more.join(', ')})`;
}

/** The revision on the sheet of a procedure: "revision 1 → 2", "revision 1, not raised". */
export function revisionWords({ revision }: Redline['procedures'][number]): string {
  const { before, after } = revision;
  if (before === undefined && after === undefined) return 'no revision is given';
  if (before === undefined) return `revision ${after ?? ''}`;
  if (before === after) return `revision ${before}, not raised`;
  return `revision ${before} → ${after ?? 'none'}`;
}
