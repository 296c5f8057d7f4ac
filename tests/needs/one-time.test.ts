import { describe } from 'vitest';
import { faulty, sound } from './example.ts';

const pot = `
fasteners:
  pot-bolt: { name: pot bolt, count: 4, torque: 10 N·m, holds: pot }
parts:
  pot: { name: pot }
  gasket: { name: gasket, behind: pot }
  seal: { name: seal, single-use: true, behind: pot }
`;
const job = `1. :remove{item=pot-bolt}. :remove{item=pot}
2. :remove[Peel the gasket off]{item=gasket}. :discard[Throw the gasket away]{item=gasket}.
3. :remove[Pull the seal out and throw it away]{item=seal}.
4. :install[Press a new seal in]{item=seal new}.
5. :install[Lay a new gasket on]{item=gasket new}.
6. :install{item=pot}. :install{item=pot-bolt}. :torque{item=pot-bolt}
`;

describe('F16 discard at removal', () => {
  sound('by the verb, or by the catalogue for what is used once', { items: pot, body: job });
  faulty(
    'a new one goes in, and nothing says what becomes of the old one',
    { items: pot, body: job.replace(' :discard[Throw the gasket away]{item=gasket}.', '') },
    ['old-part-unsaid gasket'],
  );
  faulty(
    'thrown away and nothing comes in its place',
    { items: pot, body: job.replace(/5\. .*\n/, '5. Wipe the rim.\n') },
    ['left-out gasket'],
  );
});

describe('F17 new at installation, or its absence', () => {
  sound('new after it was thrown away', { items: pot, body: job });
  faulty('the old seal goes back', { items: pot, body: job.replace('seal new', 'seal') }, [
    'old-part-back seal',
  ]);
  faulty('the old gasket goes back', { items: pot, body: job.replace('gasket new', 'gasket') }, [
    'old-part-back gasket',
  ]);
});

describe('F18 reuse with conditions', () => {
  const items = `
fasteners:
  stud-nut: { name: stud nut, torque: 22 N·m }
consumables:
  thread-compound: { name: thread compound }
`;
  const body = `1. :remove{item=stud-nut}
2. ::::either[the threads are clean and whole]
   :apply[Coat the threads]{item=stud-nut with=thread-compound}. :install[Screw the old stud nut on]{item=stud-nut}.
   ::::

   ::::or[the threads are damaged]
   :discard[Throw the stud nut away]{item=stud-nut}. :install[Screw a new stud nut on]{item=stud-nut new}.
   ::::
3. :torque{item=stud-nut}
`;
  sound('either way one nut goes on', { items, body });
  faulty(
    'the damaged nut is thrown away and goes back all the same',
    { items, body: body.replace('stud-nut new', 'stud-nut') },
    ['old-part-back stud-nut'],
  );
});

describe('F19 consumables with a specification', () => {
  const items = `
parts:
  sleeve: { name: sleeve }
consumables:
  wheel-grease: { name: wheel grease, specification: "Lithium soap, NLGI 2" }
`;
  const page = {
    items,
    body: '1. :remove{item=sleeve}\n2. :apply[Grease the bore]{item=wheel-grease}.\n3. :install{item=sleeve}\n',
  };
  sound('an entry of the catalogue, printed beside the step', page);
  faulty(
    'one that the catalogue does not have',
    { ...page, body: page.body.replace('wheel-grease', 'grease') },
    ['unknown-item', 'unused-entry wheel-grease'],
  );
});
