import { describe, expect, test } from 'vitest';
import { faulty, sound, stepsOf } from './example.ts';

describe('F30 clean, inspect with an accept limit, then replace', () => {
  const items = `
parts:
  disc: { name: disc }
tools:
  caliper: { name: caliper }
`;
  const body = `1. :remove{item=disc}. Wipe it clean.
2. :measure[Measure the disc]{item=disc with=caliper value="min 9.5 mm"}.

   :::if[the disc is thinner]
   :discard[Put the disc with the scrap]{item=disc}. :install[Fit a new disc]{item=disc new}.
   :::
3. :install{item=disc}
`;
  const either = `1. :remove{item=disc}. Wipe it clean.
2. :measure[Measure the disc]{item=disc with=caliper value="min 9.5 mm"}.

   ::::either[the disc is thick enough]
   :install{item=disc}
   ::::

   ::::or[the disc is thinner]
   :discard[Put the disc with the scrap]{item=disc}. :install[Fit a new disc]{item=disc new}.
   ::::
`;
  sound('one way keeps it, one way replaces it', { items, body: either });
  faulty('where it was replaced, it is put in again', { items, body }, ['in-without-out disc']);
  faulty('a limit in a unit that is none', { items, body: either.replace('9.5 mm', '9.5 mmm') }, [
    'unit-unknown',
  ]);
  test('the sheet has a box for the reading', () => {
    const [step] = stepsOf({ items, body: either }).slice(1);
    expect(step?.readings.map(({ item }) => item?.id)).toEqual(['disc']);
  });
});

describe('F31 repair processes', () => {
  const weld =
    '---\nprocedure: weld\ntitle: Weld a crack\n---\n\n1. Grind the crack open.\n2. Weld it.\n';
  const page = { body: '1. ::perform{procedure=weld}\n', files: { 'procedures/weld.md': weld } };
  sound('a standard repair is a procedure of its own', page);
  faulty('a repair that the manual does not have', { ...page, files: {} }, ['unknown-procedure']);
});

const engine = `
controls:
  engine: { name: engine, positions: [stopped, running], home: stopped }
`;

describe('F32 run the machine as a step', () => {
  const body =
    '1. :set[Start the engine]{item=engine to=running}.\n2. Listen for two minutes.\n3. :set[Stop the engine]{item=engine to=stopped}.\n';
  sound('started and stopped', { items: engine, body });
  faulty('left running', { items: engine, body: body.replace(/3\. .*\n/, '') }, [
    'control-away engine',
  ]);
  const live = `
energy:
  motor: { name: motor, type: electrical, isolate-before: [guard] }
parts:
  guard: { name: guard }
`;
  const run = `1. :isolate{item=motor}
2. :remove{item=guard}
3. :restore[Switch on for the run]{item=motor}.
4. Look at the belt from two metres away.
5. :isolate[Switch off and lock]{item=motor}.
6. :install{item=guard}
7. :restore{item=motor}
`;
  sound('live for the run, isolated again for the work', { items: live, body: run });
  faulty(
    'worked on while live',
    { items: live, body: run.replace(/5\. .*\n/, '5. Wait.\n').replace(/7\. .*\n/, '') },
    ['energy-live guard'],
  );
});

describe('F86 two actions at once', () => {
  const items = `${engine}
circuits:
  oil: { name: oil, fluid: SAE 30, capacity: 3 L, bleed: at the pump }
`;
  const body =
    '1. :drain{item=oil}\n2. :fill{item=oil}\n3. :set[Start the engine]{item=engine to=running}. While it runs, :bleed{item=oil}\n4. :set[Stop the engine]{item=engine to=stopped}.\n';
  sound('both in one step', { items, body });
  faulty('the one that goes on is never ended', { items, body: body.replace(/4\. .*\n/, '') }, [
    'control-away engine',
  ]);
});
