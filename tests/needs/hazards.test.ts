import { describe } from 'vitest';
import { faulty, sheet, sound } from './example.ts';

const cooler = `
circuits:
  coolant: { name: coolant, fluid: coolant mix, capacity: 9 L, dispose: To the collecting point. }
hazards:
  hot-coolant:
    signal: warning
    hazard: Hot coolant
    harm: Serious burns
    avoid: Let the engine cool for an hour first.
    raised-by: [{ verb: drain, item: coolant }]
`;
const steps = '1. :drain{item=coolant}\n2. :fill{item=coolant}\n';

describe('F65 hazards with their class before the step that they guard', () => {
  sound('before the list', { items: cooler, body: `::hazard{of=hot-coolant}\n\n${steps}` });
  sound('first in the step', {
    items: cooler,
    body: steps.replace('1. ', '1. ::hazard{of=hot-coolant}\n\n   '),
  });
  faulty('none', { items: cooler, body: steps }, ['hazard-missing coolant']);
  faulty(
    'a class that does not fit the harm',
    { body: ':::caution{hazard="The knife turns" harm="Amputation"}\nLock it.\n:::\n\n1. Look.\n' },
    ['signal-word'],
  );
  faulty(
    'without how to avoid it',
    { body: ':::warning{hazard="The knife turns" harm="Deep cuts"}\n:::\n\n1. Look.\n' },
    ['hazard-incomplete'],
  );
});

describe('F66 a hazard after its step or loose on the page', () => {
  faulty('after the step', { items: cooler, body: `${steps}\n::hazard{of=hot-coolant}\n` }, [
    'hazard-late coolant',
  ]);
});

describe('F67 a required action inside a note or a caution', () => {
  const items = `
aids:
  prop: { name: prop }
`;
  const body =
    ':::warning{hazard="The lid falls shut" harm="Crushed fingers"}\n:fit[Set the prop under the lid]{item=prop}.\n:::\n\n1. Look inside.\n2. :withdraw{item=prop}\n';
  faulty('it is counted, and told', { items, body }, ['action-in-hazard prop']);
  faulty(
    'counted: if it is never taken away, that is told too',
    { items, body: body.replace('2. :withdraw{item=prop}\n', '') },
    ['action-in-hazard prop', 'aid-left-in prop'],
  );
  faulty(
    'in a note, without a directive',
    {
      items,
      body: '1. Look inside.\n\n   > Note: remove the prop before you close the lid.\n2. :check{item=prop}\n',
    },
    ['untracked-action prop'],
  );
  faulty(
    'in a panel, without a directive',
    {
      items,
      body: ':::warning{hazard="The lid falls shut" harm="Crushed fingers"}\nRemove the prop last.\n:::\n\n1. :check{item=prop}\n',
    },
    ['untracked-action prop'],
  );
  sound('a note that says over what a step does', {
    items,
    body: '> Note: remove the prop before you close the lid.\n\n1. :fit{item=prop}\n2. :withdraw{item=prop}\n',
  });
  sound('how to avoid harm is no work', {
    items,
    body: ':::warning{hazard="The lid falls shut" harm="Crushed fingers"}\nKeep your hands away from the prop. Do not remove the prop while the lid is open. Remove the prop only with both hands. Wear gloves.\n:::\n\n1. :check{item=prop}\n',
  });
});

describe('F68 a hazard that demands a check which no step performs', () => {
  const items = `
parts:
  fuse: { name: fuse }
energy:
  mains: { name: mains, type: electrical }
hazards:
  live-parts:
    signal: danger
    hazard: Live parts
    harm: Electrocution
    avoid: Measure that there is no voltage.
    raised-by: [{ verb: remove, item: fuse }]
    first: [{ verb: check, item: mains }]
`;
  const body =
    '1. :check[Measure that there is no voltage]{item=mains}.\n2. ::hazard{of=live-parts}\n\n   :remove{item=fuse}\n3. :install{item=fuse}\n';
  sound('the catalogue says what must be done first, and a step does it', { items, body });
  faulty('no step does it', { items, body: body.replace(/1\. .*\n/, '1. Open the door.\n') }, [
    'hazard-unmet fuse',
  ]);
  const dead = {
    'machines/box.yaml': `machine: box\nname: Box\n${items.trim()}\n`,
    'procedures/make-dead.md': sheet(
      'make-dead',
      '1. :isolate{item=mains}\n2. :check[Measure that there is no voltage]{item=mains}.\n',
      'leaves: { mains: isolated }\n',
    ),
    'procedures/fuse-out.md': sheet(
      'fuse-out',
      '1. ::hazard{of=live-parts}\n\n   :remove{item=fuse}\n',
      'starts: { mains: isolated }\nleaves: { mains: isolated, fuse: out }\n',
    ),
  };
  const job =
    '1. ::perform{procedure=make-dead}\n2. ::perform{procedure=fuse-out}\n3. :install{item=fuse}. :restore{item=mains}\n';
  sound('in a procedure performed before', { files: dead, body: job });
  faulty(
    'isolated, and never measured',
    { files: dead, body: job.replace('::perform{procedure=make-dead}', ':isolate{item=mains}') },
    ['hazard-unmet fuse', 'orphan-procedure'],
  );
});

describe('F69 general safety, repeated at the step', () => {
  sound('standing text of the manual, and a panel as often as wanted', {
    items: cooler,
    manual: 'safety: Let hot machines cool.\n',
    body: `::hazard{of=hot-coolant}\n\nRead all steps first.\n\n${steps.replace('1. ', '1. ::hazard{of=hot-coolant}\n\n   ')}`,
  });
});

describe('F70 hazardous media', () => {
  const items = `
fasteners:
  bleed-screw: { name: bleed screw, torque: 8 N·m }
circuits:
  lift-oil: { name: lift oil, fluid: ISO VG 46, capacity: 12 L, pressure: 160 bar, drain: bleed-screw }
`;
  const body =
    '1. :relieve[Lower the fork and move the lever twice]{item=lift-oil}.\n2. :remove{item=bleed-screw}\n3. :install{item=bleed-screw}. :torque{item=bleed-screw}\n';
  sound('pressure relieved first', { items, body });
  faulty(
    'opened under pressure',
    { items, body: body.replace(/1\. .*\n/, '1. Lower the fork. :check{item=lift-oil}\n') },
    ['under-pressure bleed-screw'],
  );
  faulty('a medium with a hazard of its own', { items: cooler, body: steps }, [
    'hazard-missing coolant',
  ]);
});

describe('F71 mass and the lifting means that it calls for', () => {
  const items =
    'parts:\n  flywheel: { name: flywheel, mass: 62 kg }\naids:\n  hoist: { name: hoist }';
  const body =
    '1. :fit{item=hoist}\n2. :remove[Hoist the flywheel out]{item=flywheel}.\n3. :install{item=flywheel}\n4. :withdraw{item=hoist}\n';
  sound('the mass is printed beside the step, the hoist is an aid', { items, body });
  faulty('a mass in a unit of length', { items: items.replace('62 kg', '62 mm'), body }, [
    'unit-kind',
  ]);
  faulty(
    'more than one person may lift by the rule of the manual, and no help',
    {
      items: 'parts:\n  flywheel: { name: flywheel, mass: 62 kg }',
      manual: 'lift-limit: 25 kg\n',
      body: '1. :remove{item=flywheel}\n2. :install{item=flywheel}\n',
    },
    ['too-heavy flywheel', 'too-heavy flywheel'],
  );
  const limit = 'lift-limit: 25 kg\n';
  const lifted = (step: string) =>
    `1. :remove{item=flywheel${step}\n2. :install{item=flywheel${step}\n`;
  const flywheel = 'parts:\n  flywheel: { name: flywheel, mass: 42 kg }\n';
  sound('a second person', {
    items: flywheel,
    manual: limit,
    body: lifted('}\n   ::step{people=2}'),
  });
  faulty(
    'a second person, and still too much for each',
    {
      items: flywheel.replace('42 kg', '62 kg'),
      manual: limit,
      body: lifted('}\n   ::step{people=2}'),
    },
    ['too-heavy flywheel', 'too-heavy flywheel'],
  );
  sound('a lifting aid with the action', {
    items: `${flywheel}tools:\n  crane: { name: crane, lifts: true }`,
    manual: limit,
    body: lifted(' with=crane}'),
  });
  faulty(
    'a tool that lifts nothing',
    { items: `${flywheel}tools:\n  bar: { name: bar }`, manual: limit, body: lifted(' with=bar}') },
    ['too-heavy flywheel', 'too-heavy flywheel'],
  );
  const hoist = `${flywheel}aids:\n  hoist: { name: hoist, lifts: true }`;
  sound('a lifting aid that is on the machine by then', { items: hoist, manual: limit, body });
  faulty(
    'it is away again',
    {
      items: hoist,
      manual: limit,
      body: body.replace(/4\. .*\n/, '').replace('3. ', '3. :withdraw{item=hoist} '),
    },
    ['too-heavy flywheel'],
  );
  sound('no limit, no check', { items: flywheel, body: lifted('}') });
  faulty('a limit that is no mass', { manual: 'lift-limit: 25 N\n', body: '1. Look.\n' }, [
    'unit-kind',
  ]);
});
