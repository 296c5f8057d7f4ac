import { signalSchema } from '../../schemas/catalogue.ts';
import type { Item } from '../catalogue/index.ts';
import {
  conditionWords,
  hazardRegister,
  idWords,
  itemName,
  type Owner,
  type RegisteredHazard,
  valuesInText,
} from '../derive/index.ts';
import { compareText } from '../source/index.ts';
import type { HazardRow, PageLink } from './book.ts';
import { avoidance } from './hazard-panel.ts';
import { plainText } from './plain-text.ts';
import { sheetContext } from './sheet-body.ts';
import type { ManualContext } from './sheet-context.ts';
import { itemLink, procedureLink, rowAnchor } from './site-links.ts';
import { unended } from './unended.ts';

export interface HazardPages {
  /** By severity, then by what can hurt. */
  rows(): readonly HazardRow[];
  /** Id of the row for hazards that are worded so (`hazardKey`). */
  readonly anchorOf: ReadonlyMap<string, string>;
}

/** The hazards of a manual, those of the catalogue and those that only a sheet writes out. */
export function hazardPages(context: ManualContext): HazardPages {
  const anchors = new Map<string, string>();
  const counts = new Map<string, number>();
  const anchored = hazardRegister(context.manual).map((hazard) => {
    const anchor = anchorFor(hazard, counts);
    for (const key of hazard.keys) if (!anchors.has(key)) anchors.set(key, anchor);
    return { hazard, anchor };
  });
  return {
    rows: () =>
      anchored.map(({ hazard, anchor }) => hazardRow(hazard, anchor, context)).sort(bySignal),
    anchorOf: anchors,
  };
}

function bySignal(a: HazardRow, b: HazardRow): number {
  const { options } = signalSchema;
  return (
    options.indexOf(a.signal) - options.indexOf(b.signal) ||
    compareText(a.hazard, b.hazard) ||
    compareText(a.anchor, b.anchor)
  );
}

/** That of its entry; a written one counts in the first sheet that shows it. Ids of entries have no dot. */
function anchorFor({ entry, words }: RegisteredHazard, counts: Map<string, number>): string {
  if (entry !== undefined) return rowAnchor(entry.item, entry.owner);
  const { id } = words.one.procedure;
  const count = (counts.get(id) ?? 0) + 1;
  counts.set(id, count);
  return `${id}.${count}`;
}

function hazardRow(
  { entry, words, shownIn }: RegisteredHazard,
  anchor: string,
  context: ManualContext,
): HazardRow {
  const { policy, manual } = context;
  const item = entry?.item;
  return {
    anchor,
    signal: words.signal,
    hazard: unended(valuesInText(words.hazard, policy)),
    harm: unended(valuesInText(words.harm, policy)),
    avoid: plainText(avoidance(words, sheetContext(words.one, context))),
    when: item?.when && conditionWords(item.when, manual.manual.settings.variants),
    raisedBy: entry === undefined ? [] : raisedBy(entry.item.id, entry, context),
    first: entry === undefined ? [] : actions(entry.item.first, entry.owner, context),
    usedIn: shownIn.map(procedureLink),
  };
}

/** The actions that raise it, then the items that any work on raises it. */
function raisedBy(
  id: string,
  { item, owner }: NonNullable<RegisteredHazard['entry']>,
  context: ManualContext,
): HazardRow['raisedBy'] {
  const touched = [...itemsOf(owner, context).values()]
    .filter((one) => one.kind !== 'hazard' && one.hazards.includes(id))
    .map((one) => ({ item: one.id }));
  return actions([...item.raisedBy, ...touched], owner, context);
}

function actions(
  asked: readonly { readonly verb?: string | undefined; readonly item: string }[],
  owner: Owner,
  context: ManualContext,
): HazardRow['raisedBy'] {
  const items = itemsOf(owner, context);
  return asked.map(({ verb, item }) => {
    const found = items.get(item);
    return {
      words: verb === undefined ? 'any work on' : idWords(verb),
      item: found === undefined ? { href: '', text: idWords(item) } : linkTo(found, owner),
    };
  });
}

const linkTo = (item: Item, owner: Owner): PageLink => itemLink(item, owner, itemName(item));

function itemsOf(owner: Owner, { manual }: ManualContext): ReadonlyMap<string, Item> {
  const found =
    owner.kind === 'machine'
      ? manual.manual.machines.get(owner.id)
      : manual.procedures.get(owner.id)?.catalogue;
  return found?.items ?? new Map<string, Item>();
}
