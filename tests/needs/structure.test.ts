import { describe, expect, test } from 'vitest';
import { makeBook } from '../../src/render/index.ts';
import { faulty, found, sheet, sound } from './example.ts';

const rotor = `
fasteners:
  rotor-bolt: { name: rotor bolt, count: 5, torque: 45 N·m, holds: rotor }
parts:
  rotor: { name: rotor }
tools:
  wire-brush: { name: wire brush }
`;

const rotorJob = `## Setup

Stand the grinder on the bench.

## Removal

1. :remove{item=rotor-bolt}
2. :remove{item=rotor}

## Cleaning

1. Brush the hub to bare metal.
   ::step{tools=wire-brush}

## Inspection

1. :measure[Measure the rotor]{item=rotor value="min 18 mm"}.

## Repair

1. Straighten bent fins by hand.

## Installation

1. :install{item=rotor}
2. :install{item=rotor-bolt}
3. :torque{item=rotor-bolt}

## Adjustment

1. Turn the rotor by hand until it runs without rubbing.

## Check

1. :check[Look for gaps under the bolt heads]{item=rotor-bolt}.
`;

describe('F01 sections with their own meaning', () => {
  sound('headings, each with steps of its own', { items: rotor, body: rotorJob });
  faulty(
    'two sections of one name cannot be told apart',
    { items: rotor, body: rotorJob.replace('## Check', '## Repair') },
    ['section-twice'],
  );
});

describe('F02 setup header: tools, materials, personnel, references, general safety', () => {
  const items = `
parts:
  belt: { name: belt }
tools:
  straightedge: { name: straightedge }
consumables:
  lint-free-cloth: { name: lint-free cloth }
`;
  const page = {
    items,
    manual: 'safety: Only trained people may do this work.\n',
    front: 'people: 2\ntools: [straightedge]\nconsumables: [lint-free-cloth]\n',
    body: '1. :check[Look at the belt]{item=belt}. See [tension](tension.md).\n',
    files: { 'procedures/tension.md': sheet('tension', '1. Feel the belt.\n') },
  };
  sound('in the front matter, with safety from manual.yaml', page);
  faulty(
    'a tool that the catalogue does not have',
    { ...page, front: page.front.replace('straightedge', 'straight-edge') },
    ['unknown-item', 'unused-entry straightedge'],
  );
  faulty('a reference that leads nowhere', { ...page, files: {} }, ['broken-link']);
});

/** A tank on a skid, as the catalogue of a machine. */
const skid = `machine: skid
name: Skid
fasteners:
  drain-plug: { name: drain plug, torque: 30 N·m }
parts:
  strainer: { name: strainer }
circuits:
  oil: { name: oil, fluid: machine oil, capacity: 6 L, drain: drain-plug }
aids:
  wheel-chock: { name: wheel chock, count: 2 }
`;
const drain = sheet(
  'drain',
  `1. :fit{item=wheel-chock}
2. :remove{item=drain-plug}. :drain{item=oil}
3. :install{item=drain-plug}
4. :torque{item=drain-plug}
`,
  'leaves: { oil: drained, wheel-chock: fitted }\n',
);
const fill = sheet(
  'fill',
  '1. :fill{item=oil}\n2. :withdraw{item=wheel-chock}\n',
  'starts: { oil: drained, wheel-chock: fitted }\n',
);
const strainer = sheet(
  'strainer',
  '1. :remove{item=strainer}\n2. :install{item=strainer}\n',
  `starts: { oil: drained, wheel-chock: fitted }
leaves: { oil: drained, wheel-chock: fitted }
`,
);
const files = {
  'machines/skid.yaml': skid,
  'procedures/drain.md': drain,
  'procedures/fill.md': fill,
  'procedures/strainer.md': strainer,
};

describe('F03 equipment conditions as the state at the start', () => {
  const body =
    '1. ::perform{procedure=drain}\n2. ::perform{procedure=strainer}\n3. ::perform{procedure=fill}\n';
  sound('the job before brings the machine there', { body, files });
  faulty(
    'performed on a machine that is still full',
    { body: '1. ::perform{procedure=strainer}\n2. ::perform{procedure=fill}\n', files },
    ['start-not-met oil', 'start-not-met wheel-chock', 'orphan-procedure'],
  );
  faulty(
    'a state that the item does not have',
    {
      items: 'circuits:\n  oil: { name: oil, fluid: machine oil, capacity: 6 L }',
      front: 'starts: { oil: empty }\n',
      body: '1. :check{item=oil}\n',
    },
    ['unknown-state oil', 'orphan-procedure'],
  );
  sound('the pressure of a circuit relieved at the start', {
    body: '1. ::perform{procedure=let-down}\n2. ::perform{procedure=open-line}\n3. ::perform{procedure=raise}\n',
    files: {
      'machines/lift.yaml':
        'machine: lift\nname: Lift\ncircuits:\n  oil: { name: oil, fluid: ISO VG 46, capacity: 9 L, pressure: true }\nconnections:\n  line: { name: line, type: hose, circuit: oil }\n',
      'procedures/let-down.md': sheet(
        'let-down',
        '1. :relieve{item=oil}\n',
        'leaves: { oil: relieved }\n',
      ),
      'procedures/open-line.md': sheet(
        'open-line',
        '1. :disconnect{item=line}\n2. :connect{item=line}\n',
        'starts: { oil: relieved }\nleaves: { oil: relieved }\n',
      ),
      'procedures/raise.md': sheet(
        'raise',
        '1. Start the pump. :check{item=oil}\n',
        'starts: { oil: relieved }\n',
      ),
    },
  });
});

describe('F04 follow-on tasks as closing obligations', () => {
  sound('what a job leaves, another puts right', {
    body: '1. ::perform{procedure=drain}\n\n## Follow-on\n\n1. ::perform{procedure=strainer}\n2. ::perform{procedure=fill}\n',
    files,
  });
  faulty(
    'nobody fills it again',
    { body: '1. ::perform{procedure=drain}\n2. ::perform{procedure=strainer}\n', files },
    ['left-drained oil', 'aid-left-in wheel-chock', 'orphan-procedure'],
  );
  const next = {
    front: 'follow-on: [look-again]\n',
    body: '1. Look.\n',
    files: { 'procedures/look-again.md': sheet('look-again', '1. Look again.\n') },
  };
  sound('a job to do afterwards, by its id', next);
  test('the sheet has a link to it', () => {
    const { linked, report } = found(next);
    const book = makeBook(linked, report, { draft: false });
    expect(book.sheets.map(({ id, followOn }) => [id, followOn.map(({ text }) => text)])).toEqual([
      ['example', ['look-again']],
      ['look-again', []],
    ]);
  });
  faulty('one that is not there', { ...next, files: {} }, ['unknown-procedure']);
});

describe('F05 actions of another kind inside a section', () => {
  const items = `
circuits:
  oil: { name: oil, fluid: machine oil, capacity: 6 L }
parts:
  dipstick: { name: dipstick }
`;
  const body = `## Removal

1. :drain{item=oil}
2. :fill[Fill with flushing oil]{item=oil}.
3. :drain[Let the flushing oil run out]{item=oil}.

## Installation

1. :remove{item=dipstick}
2. :fill{item=oil}
3. :install{item=dipstick}
`;
  sound('the headings do not matter to the count', { items, body });
  faulty(
    'a removal inside Installation needs its return as well',
    { items, body: body.replace('3. :install{item=dipstick}\n', '') },
    ['left-out dipstick'],
  );
});

describe('F06 nested steps and inserted numbers', () => {
  const body = `1. Open the hub:
   1. :remove{item=rotor-bolt}
   2. :remove{item=rotor}
2. Brush the hub.
   ::step{tools=wire-brush}
3. Close the hub:
   1. :install{item=rotor}
   2. :install{item=rotor-bolt}. :torque{item=rotor-bolt}
`;
  sound('sub-steps count like steps; numbers are made', { items: rotor, body });
  faulty(
    'a sub-step is missing',
    { items: rotor, body: body.replace('   1. :install{item=rotor}\n', '') },
    ['left-out rotor'],
  );
});

describe('F07 a short service and a full removal side by side', () => {
  const items = `
fasteners:
  bowl-nut: { name: bowl nut, tightness: hand-tight, holds: bowl }
parts:
  bowl: { name: bowl }
  screen: { name: screen, behind: bowl }
`;
  const body = `## Service

1. :loosen{item=bowl-nut}
2. :tighten[Tighten the bowl nut by hand]{item=bowl-nut}.

## Removal

1. :remove{item=bowl-nut}. :remove{item=bowl}
2. :remove{item=screen}

## Installation

1. :install{item=screen}
2. :install{item=bowl}. :install{item=bowl-nut}
`;
  sound('each routine balances by itself', { items, body });
  faulty(
    'the short one leaves something undone for the long one',
    {
      items,
      body: body.replace(
        '2. :tighten[Tighten the bowl nut by hand]{item=bowl-nut}.\n\n## Removal\n\n1. :remove{item=bowl-nut}.',
        '\n## Removal\n\n1. :loosen{item=bowl-nut}. :remove{item=bowl-nut}.',
      ),
    },
    ['out-twice bowl-nut'],
  );
});

describe('F76 service interval inside the procedure', () => {
  const page = { front: 'interval: every 1000 h\n', body: '1. Look at the hose.\n' };
  sound('in the front matter', page);
  faulty('an interval that is no text', { ...page, front: 'interval: [1000]\n' }, ['yaml-shape']);
});

describe('F79 layouts other than numbered lines', () => {
  const items = `
parts:
  cover: { name: cover }
  screen: { name: screen, behind: cover }
`;
  const prose =
    ':remove[Lift the cover off]{item=cover} and :remove[take the screen out]{item=screen}. Rinse it. :install[Put the screen in]{item=screen} and :install[lay the cover on]{item=cover}.\n';
  const table = `| location | item | action | remarks |
|---|---|---|---|
| top | cover | :remove{item=cover} | no tools |
| inside | screen | :remove{item=screen} :install{item=screen} | rinse |
| top | cover | :install{item=cover} | |
`;
  sound('a paragraph', { items, body: prose });
  sound('rows of a table', { items, body: table });
  faulty(
    'a row is missing',
    { items, body: table.replace(/\| top \| cover \| :install.*\n/, '') },
    ['left-out cover'],
  );
  faulty(
    'order within the paragraph',
    { items, body: prose.replace(/:remove\[Lift.*?\} and /, '') },
    ['blocked screen', 'in-without-out cover'],
  );
});

describe('F75 pages of different change levels', () => {
  test('each procedure has a revision of its own, and its sheet shows it', () => {
    const history = 'history:\n  - { revision: 2, date: "2026-03-01", change: New limit. }\n';
    const { linked, report } = found({
      front: `revision: 2\n${history}`,
      body: '1. Look at the hose.\n',
      files: { 'procedures/other.md': sheet('other', '1. Look.\n', 'revision: A\n') },
    });
    expect(report.findings).toEqual([]);
    expect(
      [...linked.procedures.values()].map(({ procedure }) => procedure.front.revision),
    ).toEqual(['2', 'A']);
  });
});
