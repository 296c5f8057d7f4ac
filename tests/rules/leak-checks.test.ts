import { describe, expect, test } from 'vitest';
import { check, onePage } from '../support/manual.ts';

const items = `fasteners:
  plug: { name: drain plug, torque: 30 N·m }
circuits:
  fuel: { name: fuel, fluid: diesel fuel, capacity: 20 L, drain: plug, leak-check: true }
connections:
  hose: { name: fuel hose, type: hose, circuit: fuel }
`;

/** After what nothing checks for leaks, as it is written. */
function unchecked(...steps: readonly string[]): string[] {
  const text = onePage(items, steps.map((step, i) => `${i + 1}. ${step}\n`).join(''));
  return check({ 'procedures/example.md': text })
    .report.findings.filter(({ rule }) => rule === 'leak-unchecked')
    .map(({ start, end }) => text.slice(start.offset, end.offset));
}

const drain = ':remove{item=plug}. :drain{item=fuel}';
const shut = ':install{item=plug}. :torque{item=plug}';
const part = ':fill{item=fuel amount="15 L"}';
const full = ':fill{item=fuel}';
const look = ':check{item=fuel}';

// Fill, run, look for leaks, top up: common practice, no published source.
describe('a circuit that was drained is checked for leaks', () => {
  test.each<[string, readonly string[]]>([
    ['once it is full', [drain, shut, full, look]],
    ['before it is topped up', [drain, shut, part, look, full]],
    ['after it is topped up', [drain, shut, part, full, look]],
  ])('%s', (_, steps) => {
    expect(unchecked(...steps)).toEqual([]);
  });

  test('and where nothing does, it is told at what filled it last', () => {
    expect(unchecked(drain, shut, full)).toEqual([full]);
    expect(unchecked(drain, shut, part, full)).toEqual([full]);
    expect(unchecked(drain, shut, look, part, full)).toEqual([full]);
  });

  test('after what was shut last', () => {
    expect(unchecked(drain, full, look, shut)).toEqual([':torque{item=plug}']);
    const again = [':disconnect{item=hose}', ':connect{item=hose}'];
    expect(unchecked(drain, shut, full, look, ...again)).toEqual([':connect{item=hose}']);
    expect(unchecked(drain, shut, full, look, ...again, look)).toEqual([]);
  });
});
