import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type Duration, machineWords, minutesText, workTimes } from '../../src/derive/index.ts';
import { bookOf, linkedManual, procedureIn, sheetIn } from '../render/linked-manual.ts';

const machine = `machine: m
name: M
fasteners:
  plug: { name: plug }
  bolt: { name: bolt, count: 4, holds: cover }
  clamp: { name: clamp, holds: lamp }
parts:
  cover: { name: cover }
  gasket: { name: gasket, behind: cover }
  lamp: { name: lamp }
circuits:
  oil: { name: oil, fluid: oil, capacity: 4 L, drain: plug }
aids:
  pan: { name: pan }
controls:
  engine: { name: engine, positions: [stopped, running], home: stopped }
consumables:
  sealant: { name: sealant }
`;
const settings = `title: Times
variants:
  winch: [no, yes]
  feed: [manual, hydraulic, none]
`;
const other = '1. Work.\n   ::step{time="4 min"}\n';
const drain = '1. :drain{item=oil}\n   ::step{time="2 min" wait="20 min"}\n';

const manualOf = (text: string, front = '') => {
  const page = (id: string, body: string, more = '') =>
    `---\nprocedure: ${id}\ntitle: ${id}\n${more}---\n\n${body}`;
  return {
    'manual.yaml': settings,
    'machines/m.yaml': machine,
    'other.md': page('other', other),
    'drain.md': page('drain', drain),
    'job.md': page('job', text, front),
  };
};

const timesOf = (text: string, front = '') => {
  const manual = linkedManual(manualOf(text, front));
  const one = procedureIn(manual, 'job');
  return workTimes(manual)(one).map(({ under, duration }) => ({
    when: machineWords(under, manual.manual.space.all, manual.manual),
    duration,
  }));
};

/** The time of a job that takes equally long on all machines. */
function timeOf(text: string): Duration {
  const [time, ...others] = timesOf(text);
  if (time === undefined || others.length > 0) throw new Error('it is not one time');
  return time.duration;
}

test('time is said in hours and minutes that add up, rounded up', () => {
  expect(minutesText(0)).toBeUndefined();
  expect(minutesText(59.5)).toBe('1\u00a0h');
  fc.assert(
    fc.property(fc.integer({ min: 1, max: 100_000 }), (minutes) => {
      const text = minutesText(minutes) ?? '';
      const [, h = '0'] = /(\d+)\u00a0h/.exec(text) ?? [];
      const [, min = '0'] = /(\d+)\u00a0min/.exec(text) ?? [];
      expect(Number(h) * 60 + Number(min)).toBe(minutes);
      expect(Number(min)).toBeLessThan(60);
    }),
  );
});

describe('the work of a job', () => {
  test.each([
    [
      'every step has a time',
      '1. A.\n   ::step{time="2 min"}\n2. B.\n   ::step{time="3 min"}\n',
      5,
      true,
    ],
    ['a step has none', '1. A.\n   ::step{time="2 min"}\n2. B.\n', 2, false],
    [
      'a step only waits',
      '1. A.\n   ::step{time="2 min"}\n2. B.\n   ::step{wait="9 min"}\n',
      2,
      true,
    ],
    ['a step performs a timed job', '1. ::perform{procedure=other}\n', 4, true],
    ['the steps inside a step have them', '1. A.\n   1. B.\n      ::step{time="2 min"}\n', 2, true],
    ['the step around them has one', '1. A.\n   ::step{time="2 min"}\n   1. B.\n', 2, true],
    ['a way that may be taken has none', '1. :::if[it leaks]\n   1. A.\n   :::\n', 0, false],
    [
      'of two ways the longer',
      '1. ::::either[it leaks]\n   1. A.\n      ::step{time="2 min"}\n   ::::\n\n   ::::or[it is dry]\n   1. B.\n      ::step{time="5 min"}\n   ::::\n',
      5,
      true,
    ],
    [
      'it may take more than one round',
      ':::repeat[until it is clean]\n1. A.\n   ::step{time="2 min"}\n:::\n',
      2,
      false,
    ],
    ['hours and ranges', '1. A.\n   ::step{time="1..2 h"}\n', 120, true],
  ])('%s', (_, text, minutes, isWhole) => {
    expect(timeOf(text)).toMatchObject({ work: minutes, isWhole });
  });

  test('counts the sections below a performed one', () => {
    const parts =
      '## A\n\n1. A.\n   ::step{time="1 min"}\n\n### B\n\n1. B.\n   ::step{time="2 min"}\n\n## C\n\n1. C.\n   ::step{time="4 min"}\n';
    const manual = linkedManual({
      ...manualOf('1. ::perform{procedure=parts part=a}\n'),
      'parts.md': `---\nprocedure: parts\ntitle: Parts\n---\n\n${parts}`,
    });
    const [time] = workTimes(manual)(procedureIn(manual, 'job'));
    expect(time?.duration.work).toBe(3);
  });
});

describe('a wait', () => {
  const wait = '1. :drain{item=oil}\n   ::step{#drained time="2 min" wait="20 min"}\n';
  const lamp = '1. :remove{item=lamp}\n   ::step{time="5 min"}\n';
  const elapsed = (...steps: string[]) => timeOf(steps.join('')).elapsed;

  test('is counted beside the work', () => {
    expect(timeOf(wait + lamp)).toEqual({
      work: 7,
      waits: 20,
      busy: 7,
      elapsed: 22,
      isWhole: true,
    });
  });

  test.each([
    ['an item that the catalogue does not tie to it goes on meanwhile', lamp, 22],
    [
      'the circuit holds up its drain plug',
      '1. :install{item=plug}\n   ::step{time="5 min"}\n',
      27,
    ],
    [
      'and so what comes behind the plug',
      `1. :install{item=plug}\n   ::step{time="5 min"}\n${lamp}`,
      27,
    ],
    ['words alone may bear on anything', '1. Clean the lamp.\n   ::step{time="5 min"}\n', 27],
    ['words alone hold up what follows', `1. Wipe the plug.\n   ::step{time="1 min"}\n${lamp}`, 28],
    ['a performed job is not moved', '1. ::perform{procedure=other}\n', 26],
    [
      'an engine is not started meanwhile',
      '1. :set{item=engine to=running}\n   ::step{time="5 min"}\n',
      27,
    ],
    ['nothing is filled meanwhile', '1. :fill{item=oil}\n   ::step{time="5 min"}\n', 27],
    ['a pan stays where it is', '1. :withdraw{item=pan}\n   ::step{time="5 min"}\n', 27],
  ])('%s', (_, next, minutes) => expect(elapsed(wait, next)).toBe(minutes));

  test('holds up what needs it, and only that, where a step needs it', () => {
    const cure = '1. :apply{item=sealant}\n   ::step{#cured time="2 min" wait="20 min"}\n';
    expect(elapsed(cure, lamp)).toBe(27);
    const last = '1. Wipe it off.\n   ::step{needs=cured time="1 min"}\n';
    expect(elapsed(cure, lamp, last)).toBe(23);
    expect(elapsed(cure, last, lamp)).toBe(23);
  });

  test('is over before what stands below a need beside the steps', () => {
    const cure = '1. :apply{item=sealant}\n   ::step{#cured time="2 min" wait="20 min"}\n';
    const beside = ':::needs{step=cured}\nIt runs out.\n:::\n\n';
    expect(elapsed(cure, lamp, `\n${beside}`, lamp)).toBe(27);
    expect(elapsed(cure, `\n${beside}`, lamp, lamp)).toBe(32);
  });

  test('ties what belongs to one part, and what lies behind it', () => {
    const bolts = '1. :torque{item=bolt}\n   ::step{time="2 min" wait="20 min"}\n';
    const step = (item: string) => `1. :remove{item=${item}}\n   ::step{time="5 min"}\n`;
    expect(elapsed(bolts, step('cover'))).toBe(27);
    expect(elapsed(bolts, step('clamp'))).toBe(22);
    const cover = '1. :install{item=cover}\n   ::step{time="2 min" wait="20 min"}\n';
    expect(elapsed(cover, step('gasket'))).toBe(27);
  });

  test('at the end of a performed job is used by the caller', () => {
    expect(timeOf('1. ::perform{procedure=drain}\n')).toMatchObject({ busy: 2, elapsed: 22 });
    expect(elapsed('1. ::perform{procedure=drain}\n', '1. ::perform{procedure=other}\n')).toBe(26);
  });

  test('without waits the order of independent steps changes nothing', () => {
    const steps = ['lamp', 'cover', 'plug', 'gasket'].map(
      (item, i) => `1. :check{item=${item}}\n   ::step{time="${i + 1} min"}\n`,
    );
    fc.assert(
      fc.property(fc.shuffledSubarray(steps, { minLength: 4 }), (shuffled) => {
        expect(timeOf(shuffled.join(''))).toMatchObject({ work: 10, elapsed: 10, busy: 10 });
      }),
    );
  });
});

describe('machines that differ', () => {
  const told = (text: string, front = '') =>
    timesOf(text, front).map(({ when, duration }) => [when, duration.work]);

  test('are told apart by step, block, performed job and procedure', () => {
    const step = '1. A.\n   ::step{time="2 min"}\n2. B.\n   ::step{time="3 min" when=winch}\n';
    expect(told(step)).toEqual([
      ['winch = no', 2],
      ['winch', 5],
    ]);
    const block = ':::when[winch]\n1. A.\n   ::step{time="2 min"}\n:::\n';
    expect(told(block)).toEqual([
      ['winch = no', 0],
      ['winch', 2],
    ]);
    expect(told('1. ::perform{procedure=other when=winch}\n')).toEqual([
      ['winch = no', 0],
      ['winch', 4],
    ]);
    expect(told('1. A.\n   ::step{time="2 min" when=winch}\n', 'when: winch\n')).toEqual([
      ['winch', 2],
    ]);
  });

  test('are one where it takes equally long', () => {
    const steps = ['feed = manual', 'feed != manual']
      .map((when) => `1. A.\n   ::step{time="2 min" when="${when}"}\n`)
      .join('');
    expect(told(steps)).toEqual([[undefined, 2]]);
  });

  test('what the technician finds parts no machines', () => {
    const found =
      '1. :::if[it leaks]\n   Wipe it.\n   :::\n2. A.\n   ::step{time="2 min" when="winch & \'it leaks\'"}\n';
    expect(told(found.replaceAll("'", '\\"')).length).toBeGreaterThan(0);
  });

  test('are told apart up to a number that helps, and no time is lost beyond', () => {
    const names = Array.from({ length: 12 }, (_, i) => `kit${i}`);
    const variants = names.map((name) => `  ${name}: [no, yes]\n`).join('');
    const steps = names.map((name, i) => `1. A.\n   ::step{time="${2 ** i} min" when=${name}}\n`);
    const manual = linkedManual({
      'manual.yaml': `title: Kits\nvariants:\n${variants}`,
      'job.md': `---\nprocedure: job\ntitle: Job\n---\n\n${steps.join('')}`,
    });
    const times = workTimes(manual)(procedureIn(manual, 'job'));
    expect(times.length).toBeLessThanOrEqual(32);
    expect(Math.max(...times.map(({ duration }) => duration.work))).toBe(2 ** 12 - 1);
  });
});

describe('on the sheet', () => {
  const sheet = (text: string, front = '') => sheetIn(bookOf(manualOf(text, front)), 'job');
  const timed = (minutes: number, when = '') => `1. A.\n   ::step{time="${minutes} min"${when}}\n`;

  test('one time, with what it is made of where there are waits', () => {
    expect(sheet(timed(70)).times).toEqual([
      { total: '1\u00a0h 10\u00a0min', parts: undefined, when: undefined },
    ]);
    const { time, times } = sheet(`${drain}${'1. :remove{item=lamp}\n   ::step{time="5 min"}\n'}`);
    expect(time).toBe('22\u00a0min');
    expect(times.map(({ parts }) => parts)).toEqual([
      '7\u00a0min of work and 20\u00a0min of waits; 5\u00a0min of the waits are used for other steps',
    ]);
  });

  test('the variants that differ, by their names; many by their span', () => {
    const { time, times } = sheet(timed(10) + timed(5, ' when=winch'));
    expect(time).toBe('10\u00a0min to 15\u00a0min');
    expect(times.map(({ total, when }) => `${total}: ${when}`)).toEqual([
      '10\u00a0min: winch = no',
      '15\u00a0min: winch',
    ]);
    const many = sheet(timed(1) + timed(2, ' when=winch') + timed(4, ' when="feed = hydraulic"'));
    expect(many.times).toEqual([
      { total: '1\u00a0min to 7\u00a0min', parts: 'by variant', when: undefined },
    ]);
  });
});
