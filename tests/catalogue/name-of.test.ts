import { describe, expect, test } from 'vitest';
import { nameOf, pluralOf } from '../../src/catalogue/index.ts';
import { catalogueOf } from './manual-of.ts';

describe('plurals, by the common rules of English spelling', () => {
  test.each([
    ['anvil bolt', 'anvil bolts'],
    ['hood latch', 'hood latches'],
    ['drum bearing bush', 'drum bearing bushes'],
    ['hex key', 'hex keys'],
    ['battery', 'batteries'],
    ['guard box', 'guard boxes'],
    ['flat washer brass', 'flat washer brasses'],
    ['chipper knife', 'chipper knives'],
    ['shear half', 'shear halves'],
    ['roof', 'roofs'],
    ['gear tooth', 'gear teeth'],
    ['length of hose', 'lengths of hose'],
    ['bolt with washer', 'bolts with washer'],
    ['bracket for the fuel line', 'brackets for the fuel line'],
    ['nut (left-hand thread)', 'nuts (left-hand thread)'],
    ['plate, rear', 'plates, rear'],
    ['bolt M8', 'bolts M8'],
    ['screw M8 x 30', 'screws M8 x 30'],
    ['O-ring', 'O-rings'],
    ['blade A bolt', 'blade A bolts'],
  ])('%s → %s', (one, many) => {
    const { item } = catalogueOf(`parts:\n  p: { name: "${one}" }\n`);
    expect(pluralOf(item('p'))).toBe(many);
    expect(nameOf(item('p'), 8)).toBe(`8 ${many}`);
    expect(nameOf(item('p'), 1)).toBe(one);
    expect(nameOf(item('p'))).toBe(one);
  });

  test('the entry’s own plural goes before', () => {
    const { item } = catalogueOf('parts:\n  p: { name: chassis, plural: chassis }\n');
    expect(nameOf(item('p'), 2)).toBe('2 chassis');
  });
});
