import type { Element, ElementContent } from 'hast';
import { h } from 'hastscript';
import {
  boundValues,
  instanceWords,
  itemName,
  ownerOf,
  piecesAtEach,
  piecesOf,
  stagePieces,
  strengthOf,
  type Torqued,
  type TorqueFact,
} from '../derive/index.ts';
import type { QuantityPieces } from '../quantity/index.ts';
import { itemMarkup } from './action-markup.ts';
import { onlyFor } from './only-for.ts';
import { orderInBox } from './order-in-box.ts';
import { recordBoxes } from './record-boxes.ts';
import { settingInBox } from './setting-in-box.ts';
import type { SheetContext } from './sheet-context.ts';
import { shownWhen } from './shown-when.ts';
import { rowAnchor, torqueChartHref } from './site-links.ts';
import { twoUnits } from './two-units.ts';

/** The torque of one fastener beside its step; with record boxes, one a stage, where the step asks for a record. */
export function torqueBox(fact: TorqueFact, context: SheetContext): Element {
  const { item, instances } = fact;
  const name = itemName(item, piecesOf(item));
  const all = stagePieces(item.torque, context.policy);
  const stages = fact.isCheck ? checkedStages(item, all) : all;
  const words = fact.isCheck ? 'Check torque' : 'Torque';
  const label = { role: 'group', ariaLabel: `${words}: ${name}`, dataItem: item.id };
  return h('div.box.torque', { ...label, ...shownWhen(context.presence.when(fact.when)) }, [
    ...onlyFor(fact.when, context),
    h('p.box-title', [itemMarkup(item, name, context), amount(fact)]),
    ...(fact.isCheck ? [h('p.check', 'Check at')] : []),
    ...(fact.isRecorded ? record(stages, name, instances) : plainStages(stages)),
    ...settingInBox(fact, context),
    ...orderInBox(fact, context),
    ...detail(item, context),
    ...(fact.isCheck ? [] : checkAgain(item)),
  ]);
}

/** A joint is checked at its last torque; where it ends with a turn, all stages tell how tight it was made. */
function checkedStages(
  item: Torqued,
  stages: readonly QuantityPieces[],
): readonly QuantityPieces[] {
  return item.torque.spec.stages.at(-1)?.does === 'tighten' ? stages.slice(-1) : stages;
}

/** How many there are, and where: " × 5 on each: left, right". */
function amount({ item, count, instances }: TorqueFact): string {
  const pieces = count > 1 ? ` ×\u00a0${count}` : '';
  if (instances.length === 0) return pieces;
  const words = instanceWords(instances, piecesAtEach(item));
  return words.startsWith('on each') ? `${pieces} ${words}` : `${pieces}, ${words}`;
}

function record(
  stages: readonly QuantityPieces[],
  name: string,
  instances: readonly string[],
): Element[] {
  const [only, ...others] = stages;
  if (only === undefined || others.length > 0) return [stageTable(stages, name, instances)];
  return [
    h('p.value', twoUnits(only)),
    h('div.read', ['Record: ', ...recordBoxes(name, 'torque reached', instances)]),
  ];
}

function plainStages(stages: readonly QuantityPieces[]): ElementContent[] {
  const [only, ...others] = stages;
  if (only !== undefined && others.length === 0) return [h('p.value', twoUnits(only))];
  return [
    h(
      'ol.stages',
      stages.map((stage) => h('li.value', twoUnits(stage))),
    ),
  ];
}

function stageTable(
  stages: readonly QuantityPieces[],
  name: string,
  instances: readonly string[],
): Element {
  const rows = stages.map((stage, i) =>
    h('tr', [
      h('th', { scope: 'row' }, String(i + 1)),
      h('td.value', twoUnits(stage)),
      h('td', recordBoxes(`${name}, stage ${i + 1}`, 'torque reached', instances)),
    ]),
  );
  const head = ['Stage', 'Torque', 'Record'].map((text) => h('th', { scope: 'col' }, text));
  return h('table.stages', [h('thead', h('tr', head)), h('tbody', rows)]);
}

function detail(item: TorqueFact['item'], context: SheetContext): Element[] {
  const told =
    item.kind === 'fastener' ? [item.thread, strengthOf(item), threads(item)] : [threads(item)];
  const words = told.filter((one) => one !== undefined).join(', ');
  const owner = ownerOf(context.manual, context.one, item);
  const href = `${context.base}${torqueChartHref}#${rowAnchor(item, owner)}`;
  return [h('p.detail', [words === '' ? '' : `${words} `, h('a.chart', { href }, 'torque chart')])];
}

/** When the joint is checked once more: "Check again after 50 km". */
function checkAgain(item: TorqueFact['item']): Element[] {
  const when = item.kind === 'fastener' ? item['check-again'] : undefined;
  return when === undefined ? [] : [h('p.again', `Check again ${boundValues(when)}`)];
}

function threads({ torque }: TorqueFact['item']): string | undefined {
  return torque.threads && threadWords[torque.threads];
}

/** The state of the threads for which a torque holds. */
export const threadWords = {
  dry: 'threads dry',
  oiled: 'threads oiled',
  plated: 'threads plated',
  compound: 'threads with compound',
};
