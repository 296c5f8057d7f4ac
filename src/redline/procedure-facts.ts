import type { Place } from '../../schemas/finding.ts';
import { stateWords } from '../derive/index.ts';
import type { LinkedProcedure } from '../link/index.ts';
import { compareText } from '../source/index.ts';
import { type Fact, type Shift, sides } from './fact.ts';
import { listShifts } from './list-shifts.ts';
import { memberText } from './member-text.ts';
import type { Names } from './names.ts';
import { onOneLine } from './plain-words.ts';
import type { ProcedurePair } from './procedure-pair.ts';
import { stepFacts } from './step-facts.ts';
import { waiverFacts } from './waiver-facts.ts';

/** What changed in the own text of a procedure. */
export function procedureFacts(pair: ProcedurePair): readonly Fact[] {
  const [before, after] = [pair.before.procedure, pair.after.procedure];
  const base = { procedure: after.id, touches: [] };
  const front = frontShifts(pair).map(({ shift, path }): Fact => {
    const places = { before: before.placeOf(path), after: after.placeOf(path) };
    return { ...base, ...shift, places };
  });
  const waivers = waiverFacts(before, after, pair.names).map(
    ({ shift, ...places }): Fact => ({ ...base, ...shift, places: present(places) }),
  );
  return [...front, ...stepFacts(pair), ...waivers];
}

/** Places that are there. */
export function present(places: {
  readonly before: Place | undefined;
  readonly after: Place | undefined;
}): Fact['places'] {
  const { before, after } = places;
  return { ...(before && { before }), ...(after && { after }) };
}

interface FrontShift {
  readonly shift: Shift;
  /** Of the member of the front matter. */
  readonly path: string;
}

const plain = ['title', 'document', 'system', 'interval', 'revision'] as const;

function frontShifts({ before, after, names, conditions }: ProcedurePair): readonly FrontShift[] {
  const [a, b] = [before.procedure, after.procedure];
  const at =
    (path: string) =>
    (shift: Shift): FrontShift => ({ shift, path });
  const [was, is] = [a.front, b.front];
  const texts = plain.flatMap((field) => {
    const [one, two] = [memberText(was[field]), memberText(is[field])];
    if (one === two) return [];
    return [at(field)({ kind: 'procedure-field', field, ...sides(one, two) })];
  });
  const when = conditions.shift(
    a.when === undefined ? [] : [a.when.condition],
    b.when === undefined ? [] : [b.when.condition],
  );
  const items = (ids: readonly string[]): readonly string[] => ids.map((id) => names.item(id));
  const follow = (ids: readonly string[]): readonly string[] =>
    ids.map((id) => names.procedure(id));
  const [summary, newSummary] = [onOneLine(was.summary ?? ''), onOneLine(is.summary ?? '')];
  return [
    ...(a.id === b.id
      ? []
      : [at('procedure')({ kind: 'procedure-id', before: a.id, after: b.id })]),
    ...(a.file === b.file
      ? []
      : [at('procedure')({ kind: 'procedure-file', before: a.file, after: b.file })]),
    ...texts,
    ...(when === undefined ? [] : [at('when')(when)]),
    ...(was.people === is.people
      ? []
      : [
          at('people')({
            kind: 'people',
            ...sides(memberText(was.people), memberText(is.people)),
            ...((is.people ?? 1) < (was.people ?? 1) ? { direction: 'lower' as const } : {}),
          }),
        ]),
    ...listShifts('tool', items(was.tools), is.tools).map(withItem).map(at('tools')),
    ...listShifts('tool', items(was.consumables), is.consumables)
      .map(withItem)
      .map(at('consumables')),
    ...listShifts('procedure-field', follow(was['follow-on']), is['follow-on'])
      .map((shift): Shift => ({ ...shift, field: 'follow-on' }))
      .map(at('follow-on')),
    ...contractShifts(before, after, names, 'starts').map(at('starts')),
    ...contractShifts(before, after, names, 'leaves').map(at('leaves')),
    ...(summary === newSummary
      ? []
      : [at('summary')({ kind: 'words', field: 'summary', ...sides(summary, newSummary) })]),
    ...listShifts('words', historyOf(was), historyOf(is))
      .map((shift): Shift => ({ ...shift, field: 'history' }))
      .map(at('history')),
  ];
}

const withItem = (shift: Shift): Shift => ({ ...shift, item: shift.after ?? shift.before ?? '' });

const historyOf = ({ history }: LinkedProcedure['procedure']['front']): readonly string[] =>
  history.map(
    ({ revision, date, change }) => `revision ${revision}, ${date}: ${onOneLine(change)}`,
  );

function contractShifts(
  before: LinkedProcedure,
  after: LinkedProcedure,
  names: Names,
  side: 'starts' | 'leaves',
): readonly Shift[] {
  const was = statesOf(before, side, (id) => names.item(id));
  const is = statesOf(after, side, (id) => id);
  const ids = [...new Set([...was.keys(), ...is.keys()])].sort(compareText);
  return ids.flatMap((item): readonly Shift[] => {
    const [a, b] = [was.get(item), is.get(item)];
    return a === b ? [] : [{ kind: 'contract', field: side, item, ...sides(a, b) }];
  });
}

function statesOf(
  one: LinkedProcedure,
  side: 'starts' | 'leaves',
  idOf: (id: string) => string,
): ReadonlyMap<string, string> {
  return new Map(
    stateWords(one, one.procedure.front[side]).map(({ id, state }) => [
      idOf(id),
      state.split(', ').sort(compareText).join(', '),
    ]),
  );
}
