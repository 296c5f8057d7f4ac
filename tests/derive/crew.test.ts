import { describe, expect, test } from 'vitest';
import { bookOf, sheetIn } from '../render/linked-manual.ts';

const manual = (text: string, front = '') => ({
  'manual.yaml': `title: Crew
variants:
  winch: [no, yes]
  feed: [manual, hydraulic]
`,
  'lift.md': `---
procedure: lift
title: Lift
---

1. Lift it.
   ::step{people=2 time="5 min"}
2. Hold it.
   ::step{people=2 time="3 min" when="feed = hydraulic"}
`,
  'job.md': `---\nprocedure: job\ntitle: Job\n${front}---\n\n${text}`,
});

const sheet = (text: string, front = '') => sheetIn(bookOf(manual(text, front)), 'job');

const told = (text: string, front = '') =>
  sheet(text, front).crew.map(
    ({ people, steps, time, when }) =>
      `${people}: ${steps.map((step) => step.text).join(' ')}, ${time}, ${when}`,
  );

const step = (facts: string) => `1. A.\n   ::step{${facts}}\n`;

describe('a second person', () => {
  test('is needed where steps say so, for the sum of their times', () => {
    const text =
      step('time="1 min"') + step('people=2 time="10 min"') + step('people=2 time="5 min"');
    expect(told(text)).toEqual(['2: 2 3, 15\u00a0min, undefined']);
    expect(sheet(text).people).toBe(2);
    expect(sheet(text).crew[0]?.steps.map(({ href }) => href)).toEqual([
      'procedures/job/index.html#step-2',
      'procedures/job/index.html#step-3',
    ]);
  });

  test('and a third, each on a line', () => {
    expect(told(step('people=3 time="1 min"') + step('people=2 time="2 min"'))).toEqual([
      '2: 2, 2\u00a0min, undefined',
      '3: 1, 1\u00a0min, undefined',
    ]);
  });

  test('has no time, or at least one, where steps have none', () => {
    expect(told(step('people=2'))).toEqual(['2: 1, undefined, undefined']);
    expect(told(step('people=2') + step('people=2 time="4 min"'))).toEqual([
      '2: 1 2, at least 4\u00a0min, undefined',
    ]);
  });

  test('is told by variant', () => {
    expect(told(step('people=2 time="4 min" when=winch') + step('people=2 time="1 min"'))).toEqual([
      '2: 1, 4\u00a0min, winch',
      '2: 2, 1\u00a0min, undefined',
    ]);
    expect(told(step('people=2 when=winch'), 'when: winch\n')).toEqual([
      '2: 1, undefined, undefined',
    ]);
  });

  test('of a performed job counts at the step that performs it', () => {
    expect(told(`${step('time="1 min"')}1. ::perform{procedure=lift}\n`)).toEqual([
      '2: 2, 8\u00a0min, undefined',
    ]);
    expect(told('::perform{procedure=lift when=winch}\n')).toEqual(['2: 1, 8\u00a0min, winch']);
    const other = '::perform{procedure=lift when="feed = manual"}\n';
    expect(sheet(other, 'when: feed = hydraulic\n')).toMatchObject({ people: 1, crew: [] });
  });

  test('of the front matter is asked for without a step', () => {
    expect(sheet(step('time="1 min"'), 'people: 2\n')).toMatchObject({ people: 2, crew: [] });
  });
});

describe('hazards of some variants', () => {
  const panel = (words: string, body = '') =>
    `:::warning{hazard="${words}" harm="Burns"}\nKeep away.\n:::\n\n${body}`;
  const hazards = (text: string, front = '') =>
    sheet(text, front).hazards.map(({ hazard, when }) => [hazard, when]);

  test('say theirs, wherever the condition stands', () => {
    const text = [
      panel('Heat'),
      `::::when[winch]\n${panel('Rope')}::::\n\n`,
      ':::caution{hazard="Oil" harm="Slips" when="feed = hydraulic"}\nWipe it up.\n:::\n',
    ];
    expect(hazards(text.join(''))).toEqual([
      ['Heat', undefined],
      ['Rope', 'winch'],
      ['Oil', 'feed = hydraulic'],
    ]);
  });

  test('are for all where they come up again for the others', () => {
    const some = (when: string) => `::::when[${when}]\n${panel('Heat')}::::\n\n`;
    expect(hazards(some('winch') + some('winch = no'))).toEqual([['Heat', undefined]]);
    expect(hazards(some('winch'), 'when: winch\n')).toEqual([['Heat', undefined]]);
  });

  test('come from the catalogue with the condition of the entry', () => {
    const items =
      'items:\n  hazards:\n    rope: { signal: danger, hazard: Rope, harm: Death, avoid: Keep away, when: winch }\n';
    expect(hazards('::hazard{of=rope}\n', items)).toEqual([['Rope', 'winch']]);
    expect(hazards('::hazard{of=rope}\n', `when: winch = no\n${items}`)).toEqual([]);
  });
});

describe('torques and fluids of some variants', () => {
  const items = `items:
  fasteners:
    bolt: { name: bolt, torque: 20 N·m }
    pin: { name: pin, torque: 9 N·m, when: winch }
  circuits:
    oil: { name: oil, fluid: ISO VG 46, capacity: 4 L }
`;
  const told = (text: string, front = '') => {
    const { torques, fluids } = sheet(text, front + items);
    return [...torques, ...fluids].map(({ item, when }) => [item.text, when]);
  };

  test('say theirs, from step, action, block and entry', () => {
    expect(told('1. :torque{item=bolt when=winch}. :drain{item=oil}.\n')).toEqual([
      ['bolt', 'winch'],
      ['oil', undefined],
    ]);
    expect(told('1. :torque{item=pin}.\n   ::step{when="feed = manual"}\n')).toEqual([
      ['pin', 'winch and feed = manual'],
    ]);
    expect(told(':::fluid{item=oil when=winch}\n:::\n')).toEqual([['oil', 'winch']]);
  });

  test('say nothing that the sheet says already, and are not shown for machines that never have them', () => {
    expect(told('1. :torque{item=pin}.\n', 'when: winch\n')).toEqual([['pin', undefined]]);
    expect(told('1. :torque{item=pin}.\n', 'when: winch = no\n')).toEqual([]);
  });
});
