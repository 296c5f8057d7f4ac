import { describe, expect, test } from 'vitest';
import { check } from '../support/manual.ts';

const machine = `machine: m
name: M
parts:
  wheel: { name: flywheel, mass: 60 kg }
  cover: { name: cover, mass: 60 kg, when: winch }
aids:
  hoist: { name: hoist, lifts: true }
  sling: { name: sling, lifts: true }
  winch-sling: { name: winch sling, lifts: true, when: winch }
`;
const settings = 'title: T\nlift-limit: 25 kg\nvariants:\n  winch: [no, yes]\n';

const page = (id: string, body: string, front = '') => ({
  [`procedures/${id}.md`]: `---\nprocedure: ${id}\ntitle: ${id}\n${front}---\n\n${body}`,
});

/** What is too heavy, as the words at each place. */
function heavy(files: Readonly<Record<string, string>>): string[] {
  const all: Readonly<Record<string, string>> = {
    'manual.yaml': settings,
    'machines/m.yaml': machine,
    ...files,
  };
  return check(all)
    .report.findings.filter(({ rule }) => rule === 'too-heavy')
    .map(({ file, start, end }) => (all[file] ?? '').slice(start.offset, end.offset));
}

const out = ':remove{item=wheel}';
const back = ':install{item=wheel}';
const steps = (...texts: readonly string[]): string =>
  texts.map((text, i) => `${i + 1}. ${text}\n`).join('');

const rigging = page(
  'rigging',
  '## Rig\n\nSee that nobody stands below.\n\n### Hang\n\n1. :fit{item=hoist}\n\n## Unrig\n\n1. :withdraw{item=hoist}\n',
);
const rig = '::perform{procedure=rigging part=rig}';
const unrig = '::perform{procedure=rigging part=unrig}';

describe('a lifting aid that another procedure sees to', () => {
  test('is on from the section that puts it on to the one that takes it off', () => {
    expect(heavy({ ...rigging, ...page('job', steps(rig, out, back, unrig)) })).toEqual([]);
    expect(heavy({ ...rigging, ...page('job', steps(rig, out, unrig, back)) })).toEqual([back]);
    expect(heavy({ ...rigging, ...page('job', steps(out, rig, back, unrig)) })).toEqual([out]);
  });

  test('is off again after the whole of it', () => {
    const whole = '::perform{procedure=rigging}';
    expect(heavy({ ...rigging, ...page('job', steps(whole, out, back)) })).toEqual([out, back]);
  });

  test('is on by way of a procedure between', () => {
    const hang = page('hang', steps(rig), 'leaves: { hoist: fitted }\n');
    const job = page('job', steps('::perform{procedure=hang}', out, back, unrig));
    expect(heavy({ ...rigging, ...hang, ...job })).toEqual([]);
  });

  test('and one that performs itself is gone through once', () => {
    const round = page('round', steps('::perform{procedure=round}', ':fit{item=hoist}'));
    expect(heavy({ ...round, ...page('job', steps('::perform{procedure=round}', out)) })).toEqual(
      [],
    );
  });
});

describe('a lifting aid at the start', () => {
  test.each<[string, readonly string[]]>([
    ['hoist: fitted', []],
    ['hoist: { fitted: 1 }', []],
    ['hoist: away', [out, back]],
    ['hoist: { away: 1 }', [out, back]],
  ])('%s', (state, wanted) => {
    expect(heavy(page('job', steps(out, back), `starts: { ${state} }\n`))).toEqual(wanted);
  });
});

describe('a lifting aid helps those for whom it is on', () => {
  const either = (first: string, second: string): string =>
    `:::either[there is a beam]\n\n1. ${first}\n\n:::\n\n:::or[there is none]\n\n1. ${second}\n\n:::\n\n`;
  const fit = ':fit{item=hoist}';
  const sling = ':fit{item=sling}';
  const only = (text: string): string => text.replace('}', ' when=winch}');

  test.each<[string, string, readonly string[]]>([
    ['one way only', `${either(fit, 'Call for help.')}${steps(out)}`, [out]],
    ['each way another', `${either(fit, sling)}${steps(out)}`, []],
    ['in the way itself', either(`${fit}, then ${out}`, sling), []],
    ['in the other way', either(fit, out), [out]],
    [
      'taken off in one way',
      `${steps(fit)}\n${either(':withdraw{item=hoist}', 'Go on.')}${steps(out)}`,
      [out],
    ],
    ['on some machines', steps(only(fit), out), [out]],
    ['on the machines that have the part', steps(only(fit), only(out)), []],
    ['for a part of those machines', steps(only(fit), ':remove{item=cover}'), []],
    ['an aid of those machines', steps(':fit{item=winch-sling}', out), [out]],
    [
      'an aid of those machines, for their part',
      steps(':fit{item=winch-sling}', ':remove{item=cover}'),
      [],
    ],
    [
      'off in the second round',
      `${steps(fit)}\n:::repeat[until it runs true]\n\n${steps(out, back, ':withdraw{item=hoist}')}\n:::\n`,
      [out, back],
    ],
  ])('%s', (_, body, wanted) => {
    expect(heavy(page('job', body))).toEqual(wanted);
  });
});

test('what a reverse writes out puts aids on and off, and its own steps are looked at', () => {
  const body = `## Out\n\n${steps(':fit{item=hoist}', out, ':withdraw{item=hoist}')}\n## In\n\n::reverse{of=out}\n`;
  expect(heavy(page('job', body))).toEqual([]);
  const own = `## Out\n\n${steps(out.replace('}', ' with=hoist}'))}\n## In\n\n:::reverse{of=out}\n1. ${back}\n:::\n`;
  expect(heavy(page('job', own))).toEqual([back]);
});

test('a lifting aid on some machines is told as such', () => {
  const files = {
    'manual.yaml': settings,
    'machines/m.yaml': machine,
    ...page('job', steps(':fit{item=hoist when=winch}', out)),
  };
  const found = check(files).report.findings.find(({ rule }) => rule === 'too-heavy');
  expect(found?.message).toBe(
    'The flywheel weighs 60 kg and one person lifts it here where no lifting aid is on, but the manual allows 25 kg for each person',
  );
});
