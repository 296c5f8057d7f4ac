import { machineCondition } from '../applicability/index.ts';
import type { Circuit, Item } from '../catalogue/index.ts';
import {
  allItems,
  conditionWords,
  freezingWords,
  idWords,
  instancesOf,
  isTorqued,
  itemName,
  mixCorrections,
  mixVolumes,
  type Owned,
  type Owner,
  patternMeant,
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
  { settings, space, policy, machines }: LinkedManual['manual'],
  usesOf: (item: Torqued | Circuit) => readonly Use[],
): FigureTables {
  const usedIn = (item: Torqued | Circuit) => usesOf(item).map(({ one }) => procedureLink(one));
  const only = ({ when }: Item) => ({
    when: when && conditionWords(when, settings.variants),
    condition: machineCondition(when, space),
  });
  return {
    torqueRow: (item, owner) => ({
      anchor: rowAnchor(item, owner),
      item: itemLink(item, owner, itemName(item, piecesOf(item))),
      count: piecesAtEach(item),
      instances: instancesOf(item),
      ...only(item),
      thread: item.kind === 'fastener' ? item.thread : undefined,
      strength: item.kind === 'fastener' ? strengthOf(item) : undefined,
      threads: item.torque.threads && threadWords[item.torque.threads],
      stages: stageTexts(item.torque, policy),
      order: patternMeant(item, piecesAtEach(item)) && itemLink(item, owner, 'tightening order'),
      byDefault: item.torque.byDefault,
      usedIn: usedIn(item),
    }),
    fluidRow: (item, owner) => ({
      anchor: rowAnchor(item, owner),
      item: itemLink(item, owner),
      fluid: item.fluid,
      ...only(item),
      capacity: item.capacity === undefined ? '' : printByPolicy(item.capacity, policy),
      mix: mixVolumes(item, policy),
      freezing: freezingWords(item, policy),
      corrections: mixCorrections(item, policy),
      neverWith: item['never-with'].map((id) => {
        const other = machines.get(owner.id)?.items.get(id);
        return other === undefined ? idWords(id) : itemName(other);
      }),
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
