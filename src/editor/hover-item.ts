import { type Item, isSingleUse } from '../catalogue/index.ts';
import {
  conditionWords,
  idWords,
  instancesOf,
  instanceWords,
  itemName,
  piecesAtEach,
  stageTexts,
  strengthOf,
  whereUsed,
} from '../derive/index.ts';
import { isStateful } from '../ledger/index.ts';
import { printByPolicy } from '../quantity/index.ts';
import type { Action } from '../syntax/index.ts';
import type { Desk } from './desk.ts';
import { escaped } from './markdown-text.ts';
import { stateAt } from './state-here.ts';
import { stateText } from './state-words.ts';

/** Procedures that a hover names. */
const shown = 8;

/** An entry: what the catalogue has, where it stands at an action, and where it is used. In Markdown. */
export function itemHover(
  desk: Desk,
  item: Item,
  file: string,
  action: Action | undefined,
): string {
  const { manual } = desk.inspection.linked;
  const { policy, settings } = manual;
  const facts = [
    ...figures(item),
    'mass' in item && item.mass && `mass ${printByPolicy(item.mass, policy)}`,
    item.kind === 'circuit' && item.fluid,
    item.kind === 'circuit' && item.capacity && printByPolicy(item.capacity, policy),
    item.kind === 'control' && item.positions.map(idWords).join(', '),
    'part-number' in item && item['part-number'] && `part number ${item['part-number']}`,
    isSingleUse(item) && 'used once only',
  ].filter((fact) => typeof fact === 'string');
  const torque =
    (item.kind === 'fastener' || item.kind === 'connection') && item.torque !== undefined
      ? `Torque: ${stageTexts(item.torque, policy).join(', then ')}${item.torque.byDefault ? ', by the rule of the manual' : ''}`
      : '';
  const limits =
    item.kind === 'hazard'
      ? []
      : item.limits.map(
          ({ name, quantity }) =>
            `${name === undefined ? 'Limit' : `Limit, ${idWords(name)}`}: ${printByPolicy(quantity, policy)}`,
        );
  return [
    `**${escaped(itemName(item))}** (${item.kind} \`${item.id}\`)`,
    escaped(facts.join(' · ')),
    escaped(torque),
    ...limits.map(escaped),
    item.kind === 'hazard'
      ? escaped(`${item.signal.toUpperCase()}: ${item.harm}. ${item.avoid}`)
      : '',
    item.when ? `Only for ${escaped(conditionWords(item.when, settings.variants))}` : '',
    stateLine(desk, item, file, action),
    usedIn(desk, item),
  ]
    .filter(Boolean)
    .join('\n\n');
}

function figures(item: Item): readonly (string | undefined)[] {
  const instances = instancesOf(item);
  const count = piecesAtEach(item);
  return [
    instances.length > 0 ? `${count} at each: ${instanceWords(instances, 1)}` : undefined,
    instances.length === 0 && count > 1 ? `${count} pieces` : undefined,
    'thread' in item ? item.thread : undefined,
    item.kind === 'fastener' ? strengthOf(item) : undefined,
    item.kind === 'fastener' && item.tightness ? idWords(item.tightness) : undefined,
    'specification' in item ? item.specification : undefined,
    'size' in item ? item.size : undefined,
  ];
}

function stateLine(desk: Desk, item: Item, file: string, action: Action | undefined): string {
  if (action === undefined || !isStateful(item)) return '';
  const before = stateAt(desk, file, action.place.start.offset);
  const after = stateAt(desk, file, action.place.end.offset);
  if (before === undefined || after === undefined) return '';
  const [was, is] = [stateText(before.of(item)), stateText(after.of(item))];
  if (was === is) return `Here: ${escaped(was)}`;
  return `Before this: ${escaped(was)}  \nAfter it: ${escaped(is)}`;
}

function usedIn({ inspection }: Desk, item: Item): string {
  const uses = whereUsed(inspection.linked)(item);
  if (uses.length === 0) return 'Used in no procedure';
  const names = uses.slice(0, shown).map(({ one, verbs }) => {
    const doing = verbs.length === 0 ? '' : ` (${verbs.join(', ')})`;
    return `${escaped(one.procedure.front.title)}${doing}`;
  });
  const more = uses.length > shown ? ` and ${uses.length - shown} more` : '';
  return `Used in ${names.join(', ')}${more}`;
}
