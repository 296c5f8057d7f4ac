import { describe, expect, test } from 'vitest';
import { crew, gatherer } from '../../src/derive/index.ts';
import { faulty, found, sound } from './example.ts';

describe('F72 an assistant for a given step', () => {
  const body =
    '1. Look at the door.\n2. Lift the door while the second person holds the hinge.\n   ::step{people=2}\n';
  sound('said at the step', { body });
  faulty('no number', { body: body.replace('people=2', 'people=two') }, ['attribute-wrong']);
  test('the sheet asks for them at the start', () => {
    const { linked } = found({ body });
    const [one] = [...linked.procedures.values()];
    const crews = gatherer(linked, crew(linked.manual.space));
    expect(one && crews(one).people).toBe(2);
  });
});

describe('F73 inspector sign-off', () => {
  sound('in the words of the step, with a box that any reading has', {
    items: 'parts:\n  brake: { name: brake }',
    body: '1. :check[The inspector looks at the brake and signs]{item=brake}.\n',
  });
});

describe('F74 maintenance level', () => {
  sound('in the summary, and in words where a higher level takes over', {
    front: 'summary: Workshop level. Send a cracked housing to the depot.\n',
    body: '1. Look for cracks.\n',
  });
});

describe('F77 print and scan noise', () => {
  const items = 'parts:\n  gate: { name: gate }';
  const page = (value: string) => ({ items, body: `1. :measure{item=gate value="${value}"}.\n` });
  sound('clean figures', page('10 mm'));
  faulty('a letter for a figure', page('l0 mm'), ['unit-unknown']);
  faulty('a broken unit', page('10 rnm'), ['unit-unknown']);
  faulty('a unit spelt in another way', page('10 millimetres'), ['unit-spelling']);
});
