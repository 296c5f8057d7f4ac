import type { Verb } from '../../schemas/directives.ts';
import { verbSchema } from '../../schemas/directives.ts';
import { type Catalogue, catalogueFor, type Item, type ItemKind } from '../catalogue/index.ts';
import { itemName } from '../derive/index.ts';
import { type ItemState, isStateful, moveOf, verbsFor } from '../ledger/index.ts';
import type { Desk } from './desk.ts';
import type { DirectiveAt } from './directive-at.ts';
import type { Piece, Proposal } from './proposal.ts';
import { type StateHere, stateAt } from './state-here.ts';
import { stateText } from './state-words.ts';

const kindsIn: Readonly<Record<string, readonly ItemKind[]>> = {
  with: ['tool', 'consumable', 'aid'],
  tools: ['tool'],
  consumables: ['consumable', 'circuit'],
};

const kindsOfBlock: Readonly<Record<string, readonly ItemKind[]>> = {
  torque: ['fastener', 'connection'],
  fluid: ['circuit'],
  hazard: ['hazard'],
};

/** Entries that fit, with their names and where they stand here. What the verb would move comes first. */
export function completeItems(
  desk: Desk,
  file: string,
  { name, colons, start }: DirectiveAt,
  key: string,
  piece: Piece,
): readonly Proposal[] {
  const verb = colons === 1 && key === 'item' ? verbSchema.safeParse(name).data : undefined;
  const here = stateAt(desk, file, start);
  const kinds = kindsIn[key] ?? (colons > 1 ? kindsOfBlock[name] : undefined);
  const items = [...desk.entriesOf(here?.one.catalogue ?? onlyMachine(desk)).values()];
  return items
    .filter(
      (item) =>
        (kinds?.includes(item.kind) ?? true) &&
        (verb === undefined || verbsFor(item.kind).includes(verb)),
    )
    .map((item) => proposalFor(item, verb, here, piece));
}

function proposalFor(
  item: Item,
  verb: Verb | undefined,
  here: StateHere | undefined,
  piece: Piece,
): Proposal {
  const states = here !== undefined && isStateful(item) ? here.of(item) : [];
  const where = stateText(states);
  return {
    label: item.id,
    kind: 'item',
    detail: where === '' ? itemName(item) : `${itemName(item)}: ${where}`,
    text: item.id,
    ...piece,
    rank: verb === undefined || isMoved(item, verb, states) ? 0 : 1,
  };
}

/** Whether the verb finds pieces to move; true where nothing is known. */
function isMoved(item: Item, verb: Verb, states: readonly ItemState[]): boolean {
  if (!isStateful(item) || states.length === 0) return true;
  const move = moveOf(verb, item, { isNew: false, partly: false, to: undefined });
  if (move === undefined) return true;
  return states.some(({ standing }) =>
    standing.some(({ spread }) => spread.some(([state]) => move.from.includes(state))),
  );
}

/** For a procedure that cannot be read: its machine is not known unless there is one only. */
function onlyMachine({ inspection }: Desk): Catalogue {
  const { machines } = inspection.linked.manual;
  return catalogueFor(machines.size === 1 ? [...machines.values()][0] : undefined, undefined);
}
