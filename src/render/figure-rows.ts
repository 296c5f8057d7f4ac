import type { Circuit, Item } from '../catalogue/index.ts';
import {
  allItems,
  conditionWords,
  instancesOf,
  isTorqued,
  itemName,
  mixVolumes,
  type Owned,
  type Owner,
  piecesAtEach,
  piecesOf,
  stageTexts,
  strengthOf,
  type Torqued,
  type Use,
  valuesInText,
} from '../derive/index.ts';
import type { LinkedManual } from '../link/index.ts';
import { printByPolicy } from '../quantity/index.ts';
import { compareText } from '../source/index.ts';
import type { FluidRow, TorqueRow } from './book.ts';
import { itemLink, procedureLink, rowAnchor } from './site-links.ts';
import { threadWords } from './torque-box.ts';

export interface FigureTables {
  torqueRow(item: Torqued, owner: Owner): TorqueRow;
  fluidRow(item: Circuit, owner: Owner): FluidRow;
}

/** Rows of the torque chart and the table of fluids, with their values in the manual's units. */
export function figureTables(
  { settings, policy }: LinkedManual['manual'],
  usesOf: (item: Torqued | Circuit) => readonly Use[],
): FigureTables {
  const usedIn = (item: Torqued | Circuit) => usesOf(item).map(({ one }) => procedureLink(one));
  const only = ({ when }: Item) => when && conditionWords(when, settings.variants);
  return {
    torqueRow: (item, owner) => ({
      anchor: rowAnchor(item, owner),
      item: itemLink(item, owner, itemName(item, piecesOf(item))),
      count: piecesAtEach(item),
      instances: instancesOf(item),
      when: only(item),
      thread: item.kind === 'fastener' ? item.thread : undefined,
      strength: item.kind === 'fastener' ? strengthOf(item) : undefined,
      threads: item.torque.threads && threadWords[item.torque.threads],
      stages: stageTexts(item.torque, policy),
      byDefault: item.torque.byDefault,
      usedIn: usedIn(item),
    }),
    fluidRow: (item, owner) => ({
      anchor: rowAnchor(item, owner),
      item: itemLink(item, owner),
      fluid: item.fluid,
      when: only(item),
      capacity: item.capacity === undefined ? '' : printByPolicy(item.capacity, policy),
      mix: mixVolumes(item, policy),
      bleed: item.bleed && valuesInText(item.bleed, policy),
      dispose: item.dispose && valuesInText(item.dispose, policy),
      usedIn: usedIn(item),
    }),
  };
}

/** Every torque and every fluid of the manual, used or not, by name within each machine. */
export function allFigureRows(
  manual: LinkedManual,
  tables: FigureTables,
): { readonly torques: readonly TorqueRow[]; readonly fluids: readonly FluidRow[] } {
  const items = [...allItems(manual)].sort(byOwnerAndName);
  return {
    torques: items.flatMap(({ item, owner }) =>
      isTorqued(item) ? [tables.torqueRow(item, owner)] : [],
    ),
    fluids: items.flatMap(({ item, owner }) =>
      item.kind === 'circuit' ? [tables.fluidRow(item, owner)] : [],
    ),
  };
}

/** Machines first, as `allItems` has them. */
function byOwnerAndName(a: Owned, b: Owned): number {
  return (
    compareText(a.owner.kind, b.owner.kind) ||
    compareText(a.owner.id, b.owner.id) ||
    compareText(itemName(a.item), itemName(b.item)) ||
    compareText(a.item.id, b.item.id)
  );
}
