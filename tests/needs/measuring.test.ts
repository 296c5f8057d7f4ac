import { describe } from 'vitest';
import { faulty, sound } from './example.ts';

describe('F60 measure, calculate, choose a shim', () => {
  const items = `
fasteners:
  cap-screw: { name: cap screw, count: 4, torque: 22 N·m, holds: cap }
parts:
  cap: { name: cap }
  shim: { name: shim, behind: cap }
tools:
  depth-gauge: { name: depth gauge }
`;
  const body = `1. :remove{item=cap-screw}. :remove{item=cap}
2. :measure[Measure the depth A]{item=cap with=depth-gauge value="4.0..5.0 mm"}.
   ::step{#depth}
3. :remove{item=shim}. Shim = A − 3.2 mm.
   ::step{needs=depth}
4. :measure[Measure the chosen shim]{item=shim value="0.8..1.8 mm"}. :discard[Put the old shim away as scrap]{item=shim}. :install[Lay the chosen shim in]{item=shim new}.
5. :install{item=cap}. :install{item=cap-screw}. :torque{item=cap-screw}
6. :measure[Measure the end play]{item=cap value="0.05..0.10 mm"}.
`;
  sound('measured, shimmed, measured again', { items, body });
  faulty(
    'the shim is chosen before it was measured',
    {
      items,
      body: body
        .replace('   ::step{#depth}\n', '')
        .replace('value="0.05..0.10 mm"}.\n', 'value="0.05..0.10 mm"}.\n   ::step{#depth}\n'),
    },
    ['needs-later depth'],
  );
  faulty('the shim is forgotten', { items, body: body.replace(/ :install\[Lay.*/, '') }, [
    'left-out shim',
  ]);
});

describe('F83 record readings, subtract, compare', () => {
  const items = 'parts:\n  liner: { name: liner }';
  sound('a box for each reading and one for the difference', {
    items,
    body: '1. :measure[A: the bore across]{item=liner}.\n   ::step{#a}\n2. :measure[B: the bore along]{item=liner}.\n   ::step{#b}\n3. :check[A − B]{item=liner value="max 0.05 mm"}.\n   ::step{needs="a b"}\n',
  });
  faulty(
    'compared before the second reading',
    {
      items,
      body: '1. :measure[A: the bore across]{item=liner}.\n   ::step{#a}\n2. :check[A − B]{item=liner value="max 0.05 mm"}.\n   ::step{needs="a b"}\n3. :measure[B: the bore along]{item=liner}.\n   ::step{#b}\n',
    },
    ['needs-later b'],
  );
});

describe('F61 deferred completion', () => {
  const items = `
fasteners:
  axle-nut: { name: axle nut, torque: 150 N·m }
  split-pin: { name: split pin, single-use: true, tightness: hand-tight }
aids:
  stand: { name: stand }
`;
  const body = `1. :fit{item=stand}
2. :remove{item=split-pin}. :remove{item=axle-nut}
3. :install[Screw the axle nut on until snug]{item=axle-nut}. Leave the split pin out for now.
4. :withdraw[Let the machine down]{item=stand}.
   ::step{#down}
5. :torque{item=axle-nut}
   ::step{needs=down}
6. :install[Push a new split pin through]{item=split-pin new}.
`;
  sound('snug now, torqued on the ground, pinned last', { items, body });
  faulty('never torqued', { items, body: body.replace(/5\. .*\n.*\n/, '') }, [
    'never-torqued axle-nut',
  ]);
  faulty('never pinned', { items, body: body.replace(/6\. .*\n/, '') }, ['left-out split-pin']);
  faulty(
    'torqued before it is let down',
    { items, body: body.replace(/(4\. .*\n.*\n)(5\. .*\n.*\n)/, '$2$1') },
    ['needs-later down'],
  );
});
