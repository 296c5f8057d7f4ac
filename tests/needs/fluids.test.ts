import { describe, expect, test } from 'vitest';
import { faulty, sheet, sound, stepsOf } from './example.ts';

const sump = `
fasteners:
  sump-plug: { name: sump plug, torque: 40 N·m }
circuits:
  oil: { name: engine oil, fluid: SAE 30, capacity: 3 L, drain: sump-plug }
aids:
  pan: { name: drain pan }
`;

const oilChange = `1. :fit[Push the pan under the sump]{item=pan}.
2. :remove{item=sump-plug}. :drain[Let the oil run out]{item=oil}.
3. :install{item=sump-plug}. :torque{item=sump-plug}
4. :fill[Fill to the upper mark]{item=oil}.
5. :withdraw[Take the pan away]{item=pan}.
`;

describe('F24 drain, catch, plug, refill, bleed', () => {
  sound('drained and filled through the right points', { items: sump, body: oilChange });
  faulty('never filled', { items: sump, body: oilChange.replace(/4\. .*\n/, '4. Wait.\n') }, [
    'left-drained oil',
  ]);
  faulty(
    'filled with the plug out',
    { items: sump, body: oilChange.replace(/(3\. .*\n)(4\. .*\n)/, '$2$1') },
    ['fill-open oil'],
  );
  faulty(
    'drained with the plug in',
    {
      items: sump,
      body: oilChange
        .replace(':remove{item=sump-plug}. ', '')
        .replace(':install{item=sump-plug}. :torque{item=sump-plug}', ':check{item=sump-plug}'),
    },
    ['drain-shut oil'],
  );
  const brake = `
circuits:
  brake-fluid: { name: brake fluid, fluid: DOT 4, capacity: 0.5 L, bleed: at the caliper }
`;
  const bleed =
    '1. :drain{item=brake-fluid}\n2. :fill{item=brake-fluid}\n3. :bleed{item=brake-fluid}\n';
  sound('filled and bled', { items: brake, body: bleed });
  faulty('not bled', { items: brake, body: bleed.replace(/3\. .*\n/, '') }, [
    'not-bled brake-fluid',
  ]);
  const topped =
    '1. :drain{item=oil}\n2. :fill[Pour in 2.5 L]{item=oil amount="2.5 L"}.\n3. Run the engine for a minute and stop it.\n4. :fill[Top up to the upper mark]{item=oil}.\n';
  const tank = 'circuits:\n  oil: { name: engine oil, fluid: SAE 30, capacity: 3 L }';
  sound('filled in part, run, topped up to the mark', { items: tank, body: topped });
  sound('a part is let out, and as much goes in again', {
    items: tank,
    body: '1. :drain[Let 1 L out]{item=oil amount="1 L"}.\n2. :fill[Pour 1 L in]{item=oil amount="1 L"}.\n',
  });
  sound('the amount is all that it holds', {
    items: tank,
    body: '1. :drain{item=oil}\n2. :fill[Pour in 3.0 L]{item=oil amount="3.0 L"}.\n',
  });
  faulty('filled in part only', { items: tank, body: topped.replace(/4\. .*\n/, '') }, [
    'left-drained oil',
  ]);
  sound('a circuit that must be bled, filled in part, topped up, bled', {
    items: brake,
    body: '1. :drain{item=brake-fluid}\n2. :fill[Pour in 0.3 L]{item=brake-fluid amount="0.3 L"}.\n3. :fill[Fill up to the mark]{item=brake-fluid}.\n4. :bleed{item=brake-fluid}\n',
  });
  const lines = `${brake}connections:
  brake-hose: { name: brake hose, type: hose, circuit: brake-fluid }
`;
  faulty(
    'air came in where a line was opened',
    { items: lines, body: '1. :disconnect{item=brake-hose}\n2. :connect{item=brake-hose}\n' },
    ['not-bled brake-fluid'],
  );
  sound('a line opened, closed, and the circuit bled', {
    items: lines,
    body: '1. :disconnect{item=brake-hose}\n2. :connect{item=brake-hose}\n3. :bleed{item=brake-fluid}\n',
  });
});

describe('F63 check for leaks at the end', () => {
  sound('checks are actions that change nothing', {
    items: sump,
    body: `${oilChange}6. :check[Look for drops at the sump plug]{item=sump-plug}.\n`,
  });
  const asked = sump.replace('drain: sump-plug', 'drain: sump-plug, leak-check: true');
  const look = '6. :check[Look for drops at the sump plug]{item=sump-plug}.\n';
  sound('checked once it is full', { items: asked, body: oilChange + look });
  faulty(
    'a circuit that asks for it was open, and no check follows',
    { items: asked, body: oilChange },
    ['leak-unchecked oil'],
  );
  faulty(
    'checked before it is full',
    { items: asked, body: oilChange.replace('4. :fill', `4. :check{item=sump-plug}\n5. :fill`) },
    ['leak-unchecked oil'],
  );
  sound('topped up after the check', {
    items: asked,
    body: `${oilChange.replace(/4\. .*\n/, '4. :fill[Pour in 2.5 L]{item=oil amount="2.5 L"}.\n')}${look}7. :fill[Top up to the upper mark]{item=oil}.\n`,
  });
  const parts = {
    'machines/mower.yaml': `machine: mower\nname: Mower\n${asked.trim()}\n`,
    'procedures/empty.md': sheet(
      'empty',
      '1. :fit{item=pan}\n2. :remove{item=sump-plug}. :drain{item=oil}\n3. :install{item=sump-plug}. :torque{item=sump-plug}\n4. :withdraw{item=pan}\n',
      'leaves: { oil: drained }\n',
    ),
    'procedures/refill.md': sheet('refill', '1. :fill{item=oil}\n', 'starts: { oil: drained }\n'),
  };
  const job = '1. ::perform{procedure=empty}\n2. ::perform{procedure=refill}\n';
  sound('opened and filled by other procedures, checked here', {
    files: parts,
    body: `${job}3. :check[Look for drops]{item=oil}.\n`,
  });
  faulty('opened and filled by other procedures, checked nowhere', { files: parts, body: job }, [
    'leak-unchecked oil',
  ]);
});

describe('F87 what becomes of the old fluid', () => {
  const items = sump.replace(
    'drain: sump-plug',
    'drain: sump-plug, dispose: To the waste oil station.',
  );
  sound('in the catalogue, printed beside the drain step', { items, body: oilChange });
  test('the sheet says it', () => {
    const [, step] = stepsOf({ items, body: oilChange });
    expect(step?.fluids.map(({ circuit }) => circuit.dispose)).toEqual([
      'To the waste oil station.',
    ]);
  });
});
