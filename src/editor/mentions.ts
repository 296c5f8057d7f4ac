import { compareText } from '../source/index.ts';
import type { Desk } from './desk.ts';
import { MentionList } from './mention-list.ts';
import { machineMentions, manualMentions } from './mentions-in-catalogue.ts';
import { type Meaning, procedureMentions } from './mentions-in-procedure.ts';
import { keyOf, type Mention, type Named } from './named.ts';

/** What one file of a manual names, in order of place. */
function mentionsIn(
  desk: Desk,
  file: string,
  meaning: Meaning = meaningOf(desk),
): readonly Mention[] {
  const text = desk.textOf(file);
  if (text === undefined) return [];
  const { linked } = desk.inspection;
  const { manual } = linked;
  const list = new MentionList(file, text, manual.space);
  if (file === 'manual.yaml') manualMentions(list, manual, text);
  for (const machine of manual.machines.values())
    if (machine.file === file) machineMentions(list, machine, text);
  const procedure = desk.written(file);
  const one = procedure && linked.procedures.get(procedure.id);
  if (procedure !== undefined && one?.procedure.file === file)
    procedureMentions(list, procedure, one, meaning);
  return list.all.toSorted((a, b) => a.place.start.offset - b.place.start.offset);
}

/** What stands at an offset of a file: of several the narrowest. */
export function mentionAt(desk: Desk, file: string, offset: number): Mention | undefined {
  const width = ({ place }: Mention): number => place.end.offset - place.start.offset;
  return mentionsIn(desk, file)
    .filter(({ place }) => place.start.offset <= offset && offset <= place.end.offset)
    .toSorted((a, b) => width(a) - width(b))[0];
}

/** Every place of a manual that names the same, in order of file and place. */
export function mentionsOf(desk: Desk, named: Named): readonly Mention[] {
  const key = keyOf(named);
  const meaning = meaningOf(desk);
  return desk.files.texts
    .toSorted((a, b) => compareText(a.path, b.path))
    .filter(({ text }) => mayName(text, named))
    .flatMap(({ path }) => mentionsIn(desk, path, meaning))
    .filter((mention) => keyOf(mention.named) === key);
}

/** A text without the id names it at most by the path of a file, or by a heading. */
const mayName = (text: string, { kind, id }: Named): boolean =>
  kind === 'procedure' || kind === 'section' || text.includes(id);

function meaningOf({ inspection }: Desk): Meaning {
  const { procedures } = inspection.linked;
  const ids = new Map(
    [...procedures.values()].map(({ procedure }) => [procedure.file, procedure.id]),
  );
  return { procedures, procedureIn: (file) => ids.get(file) };
}
