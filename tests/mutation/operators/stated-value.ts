import type { Item } from '../../../src/catalogue/index.ts';
import { allActions, allBlocks, limitOf } from '../../../src/link/index.ts';
import { findQuantities, kindOf, parseQuantity } from '../../../src/quantity/index.ts';
import type { Action, Written } from '../../../src/syntax/index.ts';
import type { Edit } from '../edit.ts';
import type { Mutation, Operator, Subject } from '../operator.ts';
import { sourceWords } from '../source-words.ts';

/** Another unit of the same kind, as a writer may mistake it. */
const mistaken: Readonly<Record<string, string>> = {
  N·m: 'lbf·ft',
  lbf·ft: 'N·m',
  mm: 'in',
  L: 'US gal',
  bar: 'psi',
  '°C': '°F',
};

/** A value that stands in an attribute keeps its number and gets another unit. */
export const changeUnit: Operator = {
  name: 'change the unit of a value',
  *mutations({ linked }) {
    const { procedure } = linked;
    for (const action of allActions(procedure)) {
      for (const written of [action.value, action.amount]) {
        const text = written && inOtherUnit(written.text);
        if (written === undefined || text === undefined) continue;
        const { start, end } = written.place;
        yield {
          edits: [{ start: start.offset, end: end.offset, text }],
          words: `${sourceWords(procedure, action.place)} → ${text}`,
          about: { is: 'value', action },
        };
      }
    }
  },
};

/** The torque or the limit of the catalogue is stated at the action, but in another unit. */
export const stateOtherUnit: Operator = {
  name: 'state a torque or a limit in a wrong unit',
  mutations: (subject) => stated(subject, inOtherUnit),
};

/** The torque or the limit of the catalogue is stated at the action, a tenth too high. */
export const stateTenthMore: Operator = {
  name: 'state a torque or a limit a tenth off',
  mutations: (subject) => stated(subject, tenthMore),
};

/** The torque or the limit of the catalogue is stated at the action as it is: this is no fault. */
export const stateAsItIs: Operator = {
  name: 'state a torque or a limit as it is',
  mutations: (subject) => stated(subject, (written) => written),
};

/** A torque that stands in the words gets a tenth higher. */
export const alterTorque: Operator = {
  name: 'alter a torque in words by a tenth',
  *mutations({ linked }) {
    const { procedure } = linked;
    for (const block of allBlocks(procedure)) {
      if (block.type !== 'prose') continue;
      const { start, end } = block.place;
      for (const found of findQuantities(procedure.text.slice(start.offset, end.offset))) {
        if (found.quantity === undefined || kindOf(found.quantity) !== 'torque') continue;
        const at: Edit = {
          start: start.offset + found.start,
          end: start.offset + found.end,
          text: '',
        };
        const text = tenthMore(procedure.text.slice(at.start, at.end));
        if (text === undefined) continue;
        yield {
          edits: [{ ...at, text }],
          words: `${sourceWords(procedure, block.place)} → ${text}`,
          about: { is: 'value', action: block.actions.at(-1) },
        };
      }
    }
  },
};

function* stated(
  { linked }: Subject,
  change: (written: string) => string | undefined,
): Generator<Mutation> {
  const { procedure } = linked;
  for (const action of allActions(procedure)) {
    const item = linked.item(action.item);
    if (item === undefined || action.node === undefined || action.value !== undefined) continue;
    const known = figureOf(action, item);
    const text = known && change(known);
    if (text === undefined) continue;
    const close = action.place.end.offset - 1;
    yield {
      edits: [{ start: close, end: close, text: ` value="${text}"` }],
      words: `${sourceWords(procedure, action.place)} → ${text}`,
      about: { is: 'value', action },
    };
  }
}

/** What the catalogue says of the figure that an action reaches or reads. */
function figureOf(action: Action, item: Item): string | undefined {
  if (action.verb === 'torque')
    return item.kind === 'fastener' ? item.torque?.written.at(-1) : undefined;
  return limitOf(action, item)?.written;
}

function inOtherUnit(written: Written['text']): string | undefined {
  const unit = Object.keys(mistaken).find((one) => written.endsWith(` ${one}`));
  return unit && `${written.slice(0, -unit.length)}${mistaken[unit]}`;
}

function tenthMore(written: string): string | undefined {
  const { value } = parseQuantity(written);
  if (value?.form !== 'single' && value?.form !== 'limit') return undefined;
  const more = `${Math.round(value.amount.value * 1100) / 1000} ${value.unit}`;
  return value.form === 'limit' ? `${value.limit} ${more}` : more;
}
