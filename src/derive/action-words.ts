import type { Verb } from '../../schemas/directives.ts';
import type { Item } from '../catalogue/index.ts';
import { expectedReading, type LinkedProcedure } from '../link/index.ts';
import { printByPolicy, type UnitPolicy } from '../quantity/index.ts';
import type { Action } from '../syntax/index.ts';
import { stageTexts, writtenText } from './amounts.ts';
import { idWords } from './id-words.ts';
import { itemName } from './item-name.ts';
import { type Noun, nounOf } from './noun.ts';

/** How each verb is said. `{what}` is the item with its article, `{name}` its bare name. */
const patterns: Record<Verb, string> = {
  remove: 'Remove {what}',
  install: 'Install {what}',
  replace: 'Replace {what}',
  loosen: 'Loosen {what}',
  tighten: 'Tighten {what}{tightness}',
  torque: 'Torque {what}{torque}',
  disconnect: 'Disconnect {what}',
  connect: 'Connect {what}',
  cap: 'Cap {what}',
  uncap: 'Uncap {what}',
  'set-aside': 'Set {what} aside',
  return: 'Put {what} back in place',
  drain: 'Drain {amount}{what}',
  fill: 'Fill with {amount}{name}',
  bleed: 'Bleed {what}',
  relieve: 'Relieve the pressure of {what}',
  isolate: 'Isolate {what}',
  restore: 'Restore {what}',
  fit: 'Fit {what}',
  withdraw: 'Withdraw {what}',
  set: 'Set {what} to {to}',
  discard: 'Discard {what}',
  apply: 'Apply {with}to {what}',
  check: 'Check {what}{value}',
  measure: 'Measure {what}{value}',
};

const tightness = {
  'hand-tight': ' by hand',
  snug: ' until snug',
  'until-drag': ' until it drags',
};

/** The words of an action, cut at the item's name so that it can be a link. */
export interface ActionWords {
  readonly before: string;
  readonly name: string;
  readonly after: string;
}

/** An instruction made from the catalogue, for an action without words of the writer: "Remove the 8 anvil bolts (M12)". */
export function actionWords(
  action: Action,
  item: Item,
  one: LinkedProcedure,
  policy: UnitPolicy,
): ActionWords {
  const noun = nounOf(item, action);
  const isItselfApplied = action.verb === 'apply' && item.kind === 'consumable';
  const pattern = isItselfApplied ? 'Apply {name}' : patterns[action.verb];
  const [lead = '', rest = ''] = pattern
    .replace('{what}', '{before}{name}{after}')
    .split('{name}', 2);
  const fill = (text: string): string =>
    text.replace(/\{(\w+)\}/g, (_, slot: string) =>
      slotText(slot, { action, item, noun, one, policy }),
    );
  return { before: fill(lead), name: noun.name, after: fill(rest) };
}

interface Told {
  readonly action: Action;
  readonly item: Item;
  readonly noun: Noun;
  readonly one: LinkedProcedure;
  readonly policy: UnitPolicy;
}

function slotText(slot: string, { action, item, noun, one, policy }: Told): string {
  switch (slot) {
    case 'before':
      return noun.before;
    case 'after':
      return noun.after;
    case 'with':
      return withText(action, one);
    case 'to':
      return action.to === undefined ? '' : idWords(action.to.id);
    case 'amount':
      return action.amount === undefined ? '' : `${writtenText(action.amount.text, policy)} of `;
    case 'value':
      return readingText(action, item, policy);
    case 'torque':
      return torqueText(item, policy);
    case 'tightness':
      return item.kind === 'fastener' && item.tightness ? tightness[item.tightness] : '';
    default:
      return '';
  }
}

function withText(action: Action, one: LinkedProcedure): string {
  const names = action.with.map((ref) => {
    const found = one.item(ref);
    return found === undefined ? idWords(ref.id) : itemName(found);
  });
  return names.length === 0 ? '' : `${names.join(' and ')} `;
}

function torqueText(item: Item, policy: UnitPolicy): string {
  if ((item.kind !== 'fastener' && item.kind !== 'connection') || item.torque === undefined)
    return '';
  const stages = stageTexts(item.torque, policy);
  return stages.length === 1
    ? ` to ${stages[0]}`
    : ` in ${stages.length} stages: ${stages.join(', then ')}`;
}

/** What a reading must give: ": 1.0 to 1.5 mm". */
function readingText(action: Action, item: Item, policy: UnitPolicy): string {
  const expected = expectedReading(action, item);
  if (expected !== undefined) return `: ${printByPolicy(expected, policy)}`;
  return action.value === undefined ? '' : `: ${writtenText(action.value.text, policy)}`;
}
