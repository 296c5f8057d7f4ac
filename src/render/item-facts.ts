import type { Catalogue, Item } from '../catalogue/index.ts';
import {
  boundValues,
  conditionWords,
  idWords,
  instancesOf,
  itemName,
  patternMeant,
  piecesAtEach,
  stageTexts,
  strengthOf,
  valuesInText,
} from '../derive/index.ts';
import { tighteningOrder } from '../joint/index.ts';
import { printAsWritten, printByPolicy } from '../quantity/index.ts';
import type { MachineEntry, PageLink } from './book.ts';
import type { ManualContext } from './sheet-context.ts';
import { fluidsHref, hazardsHref, itemHref, rowAnchor, torqueChartHref } from './site-links.ts';
import { countedWords, numbersInOrder, patternWords } from './tightening-words.ts';
import { threadWords } from './torque-box.ts';

type Fact = MachineEntry['facts'][number];

/** What the catalogue says of an entry, in words, with links to the entries that it names. */
export function itemFacts(item: Item, machine: Catalogue, context: ManualContext): readonly Fact[] {
  const facts: Fact[] = [];
  const owner = { kind: 'machine', id: machine.id } as const;
  const say = (label: string, value: string | undefined, links: readonly PageLink[] = []): void => {
    if (value || links.length > 0) facts.push([label, value ?? '', links]);
  };
  const point = (label: string, ids: readonly string[] = []): void => {
    const found = ids.flatMap((id) => machine.items.get(id) ?? []);
    const unknown = ids.filter((id) => !machine.items.has(id));
    const links = found.map((one) => ({ href: itemHref(one, owner), text: itemName(one) }));
    say(label, unknown.join(', '), links);
  };
  const { policy, manual } = context;
  const instances = instancesOf(item);
  const atEach = piecesAtEach(item);
  if (instances.length > 0) say('Count', `${atEach} on each: ${instances.join(', ')}`);
  else if (atEach > 1) say('Count', String(atEach));
  switch (item.kind) {
    case 'fastener':
      say('Thread', item.thread);
      say('Strength', strengthOf(item));
      say('Tightness', item.tightness && idWords(item.tightness));
      say('Goes with', item.stack.join(', '));
      say('Use', item['single-use'] ? 'once only' : undefined);
      say(
        'Undone at a time',
        item['most-undone'] === undefined ? undefined : `at most ${item['most-undone']}`,
      );
      say('Check again', item['check-again'] && boundValues(item['check-again']));
      point('Holds', item.holds);
      point('Behind', item.behind);
      break;
    case 'part':
      say('Mass', item.mass && printByPolicy(item.mass, policy));
      say('Use', item['single-use'] ? 'once only' : undefined);
      point('Behind', item.behind);
      break;
    case 'connection':
      say('Type', item.type);
      point('Circuit', item.circuit === undefined ? [] : [item.circuit]);
      point('On', item.on === undefined ? [] : [item.on]);
      say('When open', item['cap-when-open'] ? 'cap it' : undefined);
      point('Behind', item.behind);
      break;
    case 'circuit': {
      const link = { href: `${fluidsHref}#${rowAnchor(item, owner)}`, text: 'fluids' };
      say('Fluid', item.fluid, [link]);
      say('Capacity', item.capacity && printByPolicy(item.capacity, policy));
      point('Drained at', item.drain);
      point('Filled at', item.fill);
      say('Bleeding', item.bleed && valuesInText(item.bleed, policy));
      say(
        'Pressure',
        item.pressure === undefined || item.pressure === false
          ? undefined
          : 'relieve before opening',
      );
      say('Old fluid', item.dispose && valuesInText(item.dispose, policy));
      say('When shut again', item['leak-check'] ? 'check for leaks' : undefined);
      break;
    }
    case 'energy':
      say('Type', idWords(item.type));
      point('Isolate before work on', item['isolate-before']);
      break;
    case 'control':
      say('Positions', item.positions.map(idWords).join(', '));
      say('Home position', idWords(item.home));
      break;
    case 'aid':
      point('Keeps out', item.blocks);
      say('Use', item.lifts ? 'carries heavy parts' : undefined);
      break;
    case 'tool':
      say('Size', item.size && boundValues(item.size));
      say('Length', item.length && printByPolicy(item.length, policy));
      say('Extension', item.extension && printByPolicy(item.extension, policy));
      say('Use', item.lifts ? 'carries heavy parts' : undefined);
      break;
    case 'consumable':
      say('Specification', item.specification && boundValues(item.specification));
      break;
    case 'hazard':
      say('Signal word', item.signal.toUpperCase(), [
        { href: `${hazardsHref}#${rowAnchor(item, owner)}`, text: 'hazards' },
      ]);
      say('What it does', valuesInText(item.harm, policy));
      say('What to do', valuesInText(item.avoid, policy));
      point('First see to', [...new Set(item.first.map((one) => one.item))]);
      break;
  }
  if ((item.kind === 'fastener' || item.kind === 'connection') && item.torque !== undefined) {
    const { torque } = item;
    const stages = stageTexts(torque, policy).join(', then ');
    const threads = torque.threads === undefined ? '' : `, ${threadWords[torque.threads]}`;
    const link = { href: `${torqueChartHref}#${rowAnchor(item, owner)}`, text: 'torque chart' };
    say('Torque', stages + threads, [link]);
  }
  if (item.kind === 'fastener' || item.kind === 'part') {
    say('Facing', item.facing && boundValues(item.facing));
    point('Renewed with it', item['renew-with']);
  }
  if (item.kind !== 'hazard') {
    for (const { name, quantity } of item.limits)
      say(
        name === undefined ? 'Limit' : `Limit, ${idWords(name)}`,
        printByPolicy(quantity, policy),
      );
  }
  if ('containers' in item) {
    for (const { of, sizes } of item.containers)
      say(
        of === undefined ? 'Sold in' : `Sold in, ${idWords(of)}`,
        sizes.map(printAsWritten).join(', '),
      );
  }
  if ('coat' in item) point('Coat before it goes in', item.coat);
  const pattern = patternMeant(item, atEach);
  if (pattern !== undefined) {
    const order = numbersInOrder(tighteningOrder(pattern));
    say('Pattern', patternWords(pattern));
    say('Tightening order', `${order}, ${countedWords(pattern)}`);
  }
  if (item.kind !== 'hazard') {
    point('Part of', item.in === undefined ? [] : [item.in]);
    point('Hazards', item.hazards);
    say('Also called', item['also-called'].join(', '));
  }
  say('Only for', item.when && conditionWords(item.when, manual.manual.settings.variants));
  return facts;
}
