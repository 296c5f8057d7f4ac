import { rules } from '../rules/index.ts';
import { completeCondition } from './complete-condition.ts';
import { completeItems } from './complete-items.ts';
import { completeUnit } from './complete-units.ts';
import type { Desk } from './desk.ts';
import type { DirectiveAt } from './directive-at.ts';
import type { Piece, Proposal } from './proposal.ts';
import { stepsIn } from './steps-in.ts';

export type ValueAt = Extract<DirectiveAt['at'], { part: 'value' }>;

/** What an attribute may have as its value. */
export function completeValue(
  desk: Desk,
  file: string,
  directive: DirectiveAt,
  at: ValueAt,
  offset: number,
): readonly Proposal[] {
  const { linked } = desk.inspection;
  const { manual, procedures } = linked;
  const piece = pieceOf(at, offset);
  const listed = (
    values: Iterable<readonly [id: string, detail?: string]>,
    kind: Proposal['kind'] = 'value',
  ): readonly Proposal[] =>
    [...values].map(([id, detail], rank) => ({
      label: id,
      kind,
      ...(detail !== undefined && { detail }),
      text: id,
      ...piece,
      rank,
    }));
  const item = (): ReturnType<typeof itemGiven> => itemGiven(desk, file, directive);
  switch (at.key) {
    case 'when':
      return quoted(completeCondition(manual, at.text, at.from, offset), at);
    case 'item':
    case 'with':
    case 'tools':
    case 'consumables':
    case 'except':
    case 'at':
      return directive.name === 'callout' && at.key === 'at'
        ? []
        : completeItems(desk, file, directive, at.key, piece);
    case 'of':
      return directive.name === 'reverse'
        ? listed(sectionsOf(desk, desk.written(file)?.id), 'place')
        : completeItems(desk, file, directive, 'of', piece);
    case 'procedure':
      return listed(
        [...procedures].map(([id, { procedure }]) => [id, procedure.front.title] as const),
        'procedure',
      );
    case 'part':
      return listed(sectionsOf(desk, directive.given.get('procedure')), 'place');
    case 'needs':
    case 'step':
      return listed(stepsIn(desk.written(file)), 'place');
    case 'to': {
      const of = item();
      return of?.kind === 'control' ? listed(of.positions.map((id) => [id])) : [];
    }
    case 'limit':
      return listed(
        (item()?.limits ?? []).flatMap(({ name, written }) =>
          name === undefined ? [] : [[name, written] as const],
        ),
      );
    case 'each': {
      const of = item();
      return listed((of && 'each' in of ? (of.each ?? []) : []).map((id) => [id]));
    }
    case 'rule':
      return listed(rules.map(({ id, family }) => [id, family] as const));
    case 'changed': {
      const front = desk.written(file)?.front;
      const known = [...(front?.history ?? []).map(({ revision }) => revision), front?.revision];
      return listed([...new Set(known)].flatMap((one) => (one === undefined ? [] : [[one]])));
    }
    case 'src':
      return listed(figuresFrom(desk, file).map((path) => [path]));
    case 'value':
    case 'amount':
    case 'time':
    case 'wait':
    case 'angle':
      return quoted(completeUnit(manual, at.text, at.from, offset, at.key, item()), at);
    default:
      return [];
  }
}

/** A value with blanks in it needs quotation marks around the whole. */
function quoted(proposals: readonly Proposal[], at: ValueAt): readonly Proposal[] {
  if (at.isQuoted) return proposals;
  return proposals.map((one) => {
    const before = at.text.slice(0, one.from - at.from);
    const after = at.text.slice(one.to - at.from);
    const { from, to } = at;
    const text = `"${before}${one.text}${after}"`;
    const snippet = `"${plain(before + one.text)}$1${plain(after)}"`;
    return { ...one, text, snippet, from, to };
  });
}

/** What means something in a snippet means itself. */
const plain = (text: string): string => text.replaceAll(/[\\$}]/g, '\\$&');

/** Of a list the word at the offset, else the whole value. */
function pieceOf({ key, text, from, to }: ValueAt, offset: number): Piece {
  if (!['with', 'tools', 'consumables', 'except', 'needs', 'step', 'each'].includes(key))
    return { from, to };
  const before = /[^\s,]*$/.exec(text.slice(0, offset - from))?.[0] ?? '';
  const after = /^[^\s,]*/.exec(text.slice(offset - from))?.[0] ?? '';
  return { from: offset - before.length, to: offset + after.length };
}

function itemGiven(desk: Desk, file: string, { given }: DirectiveAt) {
  const id = given.get('item');
  const { linked } = desk.inspection;
  const own = desk.written(file)?.id;
  const one = own === undefined ? undefined : linked.procedures.get(own);
  return id === undefined ? undefined : one?.item(id);
}

function sectionsOf(
  { inspection }: Desk,
  id: string | undefined,
): readonly (readonly [string, string?])[] {
  const one = id === undefined ? undefined : inspection.linked.procedures.get(id);
  return (one?.procedure.sections ?? []).map((section) => [section.id, section.title]);
}

/** Pictures of the manual as a file would name them. */
function figuresFrom({ files }: Desk, file: string): readonly string[] {
  const up = '../'.repeat(file.split('/').length - 1);
  return files.others.filter((path) => path.startsWith('figures/')).map((path) => up + path);
}
