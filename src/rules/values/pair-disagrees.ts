import {
  convert,
  judgePair,
  mainUnit,
  printAsWritten,
  printPieces,
  type Quantity,
  type UnitId,
} from '../../quantity/index.ts';
import { type PairSaid, pairsSaid } from '../reading/pairs-said.ts';
import type { Draft, Rule } from '../rule.ts';

export const rule: Rule = {
  id: 'pair-disagrees',
  family: 'values',
  level: 'warning',
  *check(examined): Generator<Draft> {
    for (const said of pairsSaid(examined)) {
      const verdict = judgePair(said.pair.first.quantity, said.pair.second.quantity);
      if (verdict !== 'disagrees' && verdict !== 'unsafe') continue;
      const { place, procedure, item, text, pair } = said;
      const first = text.slice(pair.first.start, pair.first.end).trim();
      const second = text.slice(pair.second.start, pair.second.end).trim();
      const words = verdict === 'unsafe' ? unsafeWords(said) : disagreeWords(said);
      yield { place, procedure, item, ...words, data: { verdict, first, second } };
    }
  },
};

function disagreeWords({ pair }: PairSaid): { message: string; help: string } {
  const [first, second] = [pair.first.quantity, pair.second.quantity];
  const [one, two] = [mainUnit(first), mainUnit(second)];
  return {
    message: `${bare(first)} is ${exact(first, two)}, but ${bare(second)} is printed beside it`,
    help: `Look up which is right. If it is ${bare(first)}, write “${pairText(first, two)}”; if it is ${bare(second)}, write “${printed(second, one)} (${bare(second)})”.`,
  };
}

/** "44 lbf·ft (60 N·m)" as the sheet would print it. */
function pairText(first: Quantity, unit: UnitId): string {
  return `${bare(first)} (${printed(first, unit)})`;
}

function unsafeWords({ pair }: PairSaid): { message: string; help: string } {
  const [first, second] = [pair.first.quantity, pair.second.quantity];
  const unit = mainUnit(second);
  const isMaximum = first.form === 'limit' && first.limit === 'max';
  return {
    message: `${bare(first)} is ${exact(first, unit)}, and ${bare(second)} beside it allows ${isMaximum ? 'more than this maximum' : 'less than this minimum'}`,
    help: `A ${isMaximum ? 'maximum is never rounded up' : 'minimum is never rounded down'}. Write “${pairText(first, unit)}”, or find out whether ${bare(second)} is the limit that was meant.`,
  };
}

/** Without `max` and `min`, which the sentence says, and with plain spaces. */
function bare(quantity: Quantity): string {
  return plain(printAsWritten(quantity));
}

function printed(quantity: Quantity, unit: UnitId): string {
  return plain(printPieces(quantity, { first: unit }).value?.first ?? '');
}

const plain = (text: string): string => text.replaceAll('\u00a0', ' ').replace(/^(?:max|min) /, '');

/** With four digits, which is finer than any that the pair would be written with. */
function exact(quantity: Quantity, unit: UnitId): string {
  const { value } = convert(quantity, unit);
  if (value === undefined) return printed(quantity, unit);
  const measure = value.form === 'torque-angle' ? value.torque : value;
  const number = (one: { value: number }): string => fourDigits(one.value);
  const angle = value.form === 'torque-angle' ? ` + ${bare(value.angle)}` : '';
  switch (measure.form) {
    case 'single':
    case 'limit':
      return `${number(measure.amount)} ${unit}${angle}`;
    case 'range':
      return `${number(measure.low)} to ${number(measure.high)} ${unit}${angle}`;
    case 'tolerance': {
      const by = measure.by === 'share' ? ' %' : '';
      return `${number(measure.amount)} ± ${number(measure.tolerance)}${by} ${unit}${angle}`;
    }
  }
}

function fourDigits(value: number): string {
  const rounded = Number(value.toPrecision(4));
  return String(rounded).replace('-', '−');
}
