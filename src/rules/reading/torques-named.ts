import type { Place } from '../../../schemas/finding.ts';
import type { Catalogue, Connection, Fastener, Item } from '../../catalogue/index.ts';
import type { LinkedProcedure } from '../../link/index.ts';
import type { Prose } from '../../syntax/index.ts';
import { figureOwners, mainName, otherTorques } from '../wording/torque-owner.ts';
import { itemFinder, type NamedItem } from './item-names.ts';
import { nounsOf } from './item-nouns.ts';
import { placedProse } from './placed-prose.ts';
import { plainWords, type RunningText, runningTexts } from './running-text.ts';
import { longestSentence, sentencesOf } from './sentences.ts';
import { saysTightening } from './torque-actions.ts';
import { type TorqueFigure, torquesIn } from './torque-figures.ts';

/** A torque in words that names what it is for, in a sentence or a table row without a directive that tightens it. */
export interface NamedTorque {
  readonly figure: TorqueFigure;
  readonly place: Place;
  /** All entries of that name; each has a torque. */
  readonly items: readonly Torqued[];
}

export type Torqued = (Fastener | Connection) & {
  readonly torque: NonNullable<Fastener['torque']>;
};

/** In order of reading; only those that are beyond doubt. */
export function* namedTorques(one: LinkedProcedure): Generator<NamedTorque> {
  for (const { prose } of placedProse(one)) {
    if (prose.node.type === 'table') yield* inRows(prose, one);
    else for (const text of runningTexts(prose, one)) yield* inSentences(text, one);
  }
}

function* inSentences(text: RunningText, one: LinkedProcedure): Generator<NamedTorque> {
  for (const { start, end } of sentencesOf(text)) {
    const words = plainWords(text).slice(start, end);
    if (end - start > longestSentence || otherTorques.test(words)) continue;
    const figures = torquesIn(words).filter(isExact);
    if (figures.length === 0 || saysTightening(text, { start, end }, one)) continue;
    const names = namesIn(words, one.catalogue);
    for (const [i, name] of figureOwners(words, figures, names).entries()) {
      const figure = figures[i];
      const items = name === undefined ? [] : torquedAs(words, name, one.catalogue);
      if (figure === undefined || items.length === 0) continue;
      yield { figure, place: text.placeOf(start + figure.start, start + figure.end), items };
    }
  }
}

/** A row that names one entry in one cell says its torque in cells that hold nothing else. */
function* inRows(prose: Prose, one: LinkedProcedure): Generator<NamedTorque> {
  if (prose.node.type !== 'table') return;
  const [head = [], ...rows] = prose.node.children.map((row) => row.children);
  const texts = runningTexts(prose, one);
  const heads = texts.slice(0, head.length).map(({ text }) => text);
  let at = head.length;
  for (const row of rows) {
    const cells = texts.slice(at, at + row.length);
    at += row.length;
    if (cells.some((cell) => otherTorques.test(cell.text))) continue;
    const named = cells.flatMap((cell) => {
      const words = plainWords(cell);
      return namesIn(words, one.catalogue).map((name) => ({ words, name }));
    });
    const [only, ...others] = named.filter(({ name }) => canTighten(name.item));
    if (only === undefined || others.length > 0 || !mainName(only.words, only.name)) continue;
    const items = torquedAs(only.words, only.name, one.catalogue);
    if (items.length === 0) continue;
    for (const [column, cell] of cells.entries()) {
      if (otherTorques.test(heads[column] ?? '')) continue;
      for (const figure of onlyFigures(plainWords(cell)))
        yield { figure, place: cell.placeOf(figure.start, figure.end), items };
    }
  }
}

function onlyFigures(words: string): TorqueFigure[] {
  const figures = torquesIn(words);
  let rest = words;
  for (const { start, end } of figures)
    rest = rest.slice(0, start) + ' '.repeat(end - start) + rest.slice(end);
  return /[\p{L}\d]/u.test(rest) ? [] : figures.filter(isExact);
}

/** "10..60 N·m" and "max 60 N·m" may be what a wrench can do. */
const isExact = ({ quantity }: TorqueFigure): boolean =>
  quantity.form !== 'range' && quantity.form !== 'limit';

function namesIn(words: string, catalogue: Catalogue): NamedItem[] {
  const find = itemFinder(catalogue);
  const names: NamedItem[] = [];
  let from = 0;
  for (let name = find(words); name !== undefined; name = find(words.slice(from))) {
    const { item, start, end } = name;
    if (item.kind !== 'tool') names.push({ item, start: from + start, end: from + end });
    from += end;
  }
  return names;
}

const canTighten = ({ kind }: Item): boolean => kind === 'fastener' || kind === 'connection';

/** The entries of one name, if all have a torque. */
function torquedAs(words: string, { start, end }: NamedItem, { items }: Catalogue): Torqued[] {
  const said = words.slice(start, end).toLowerCase().replace(/\s+/g, ' ');
  const same = [...items.values()].filter((item) => {
    const { one, many } = nounsOf(item);
    return [...one, ...many].some((noun) => noun.toLowerCase() === said);
  });
  const torqued = same.flatMap((item) => {
    if (item.kind !== 'fastener' && item.kind !== 'connection') return [];
    const { torque } = item;
    return torque === undefined ? [] : [{ ...item, torque }];
  });
  return torqued.length === same.length ? torqued : [];
}
