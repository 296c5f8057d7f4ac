import type { Catalogue, Item, ItemKind } from '../catalogue/index.ts';
import { itemName, type Use, valuesInText } from '../derive/index.ts';
import { targetOf } from '../link/index.ts';
import { compareText } from '../source/index.ts';
import type { MachineEntry, MachinePage } from './book.ts';
import { itemFacts } from './item-facts.ts';
import { machinePictures } from './machine-pictures.ts';
import type { ManualContext } from './sheet-context.ts';
import { figureHref, machineHref, procedureLink } from './site-links.ts';

/** Headings of the kinds, in the order of the page. */
const headings: Record<ItemKind, string> = {
  fastener: 'Fasteners',
  part: 'Parts',
  connection: 'Connections',
  circuit: 'Fluids',
  energy: 'Energy to isolate',
  control: 'Controls',
  aid: 'Aids fitted for the work',
  tool: 'Tools',
  consumable: 'Consumables',
  hazard: 'Hazards',
};

/** The page of a machine: its entries by kind and name, each with what is known of it and where it is used. */
export function machinePage(
  machine: Catalogue,
  usesOf: (item: Item) => readonly Use[],
  context: ManualContext,
): MachinePage {
  const prosaic = (text: string): string => valuesInText(text, context.policy);
  const entry = (item: Item): MachineEntry => ({
    id: item.id,
    name: itemName(item),
    partNumber: item.kind === 'hazard' ? undefined : item['part-number'],
    picture: pictureOf(item, context),
    note: item.kind === 'hazard' || item.note === undefined ? undefined : prosaic(item.note),
    facts: itemFacts(item, machine, context),
    usedIn: usesOf(item).map(({ one, verbs }) => ({ ...procedureLink(one), verbs })),
  });
  const items = [...machine.items.values()].sort(
    (a, b) => compareText(itemName(a), itemName(b)) || compareText(a.id, b.id),
  );
  const groups = Object.entries(headings).flatMap(([kind, heading]) => {
    const entries = items.filter((item) => item.kind === kind).map(entry);
    return entries.length === 0 ? [] : [{ kind, heading, entries }];
  });
  return {
    id: machine.id,
    href: machineHref(machine.id),
    name: machine.name,
    note: machine.note && prosaic(machine.note),
    ...machinePictures(machine),
    groups,
  };
}

/** The picture that an entry names, seen from the page of its machine; its words are the entry itself. */
function pictureOf(item: Item, { base }: ManualContext): MachineEntry['picture'] {
  const path = entryPicture(item);
  return path === undefined ? undefined : { src: base + figureHref(path), alt: itemName(item) };
}

/** Path of the picture that an entry names, from the folder of the manual. */
export function entryPicture(item: Item): string | undefined {
  if (item.kind === 'hazard' || item.figure === undefined) return undefined;
  const target = targetOf(item.placeOf('figure').file, item.figure);
  return target.kind === 'file' ? target.path : undefined;
}
