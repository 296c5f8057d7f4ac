import { describe, expect, test } from 'vitest';
import { edited, manual, plain, redlineOf, toldOf, withEdits } from './compare.ts';

const path = 'procedures/change-seal.md';
const job = (from: string, to: string): string[] =>
  toldOf(edited(['job', from, to]).changes).map(plain);
const text = manual[path] ?? '';
const steps = text.split(/^(?=\d\. )/m);

describe('protection', () => {
  test('a step that isolates is gone', () => {
    expect(job('1. :isolate{item=mains}.\n', '')).toEqual([
      'protection step Step removed: “isolate mains supply” (isolate)',
    ]);
  });

  test('a hazard panel is gone', () => {
    expect(job('2. ::hazard{of=ram}\n\n   :remove', '2. :remove')).toEqual([
      'protection hazard Hazard removed: “WARNING: The ram falls. Crushed hands”',
    ]);
  });

  test('a hazard panel comes later', () => {
    const { changes } = redlineOf(manual, {
      ...manual,
      [path]: text
        .replace('2. ::hazard{of=ram}\n\n   :remove', '2. :remove')
        .replace('4. :remove[Pull', '4. ::hazard{of=ram}\n\n   :remove[Pull'),
    });
    expect(toldOf(changes)).toEqual([
      'protection hazard Hazard “The ram falls” comes later, in step 4 (was in step 2)',
    ]);
  });

  test('written panels: harm, what to do, and the signal word', () => {
    const panel = (signal: string, harm: string, avoid: string) =>
      withEdits([
        'job',
        '4. :remove',
        `4. :::${signal}{hazard="Edge of the groove" harm="${harm}"}\n   ${avoid}\n   :::\n\n   :remove`,
      ]);
    const told = (
      before: readonly [string, string, string],
      after: readonly [string, string, string],
    ) => toldOf(redlineOf(panel(...before), panel(...after)).changes);
    const base = ['warning', 'Deep cuts', 'Wear gloves.'] as const;
    expect(told([...base], ['caution', 'Deep cuts', 'Wear gloves.'])).toEqual([
      'protection hazard-signal Signal word of “Edge of the groove” lowered: WARNING → CAUTION',
    ]);
    expect(told([...base], ['warning', 'Cuts', 'Wear gloves.'])).toEqual([
      'work hazard-words Harm, of “Edge of the groove”, changed: “Deep cuts” → “Cuts”',
    ]);
    expect(told([...base], ['warning', 'Deep cuts', 'Take care.'])).toEqual([
      'work hazard-words How to avoid it, of “Edge of the groove”, changed: “Wear gloves.” → “Take care.”',
    ]);
  });

  test('fewer people', () => {
    expect(job('people=2 needs', 'needs')).toEqual(['protection people People: 2 → 1']);
  });
});

describe('work', () => {
  test('a step that brings something back is gone', () => {
    const told = job('4. :torque[Torque the cover bolts crosswise]{item=cover-bolt}.\n', '');
    expect(told).toEqual([
      'put-back step Step removed: “Torque the cover bolts crosswise.” (torque)',
    ]);
  });

  test('an action out of a step that stays', () => {
    expect(
      job(':install[Put in the 8 cover bolts]{item=cover-bolt}.', 'Put in the 8 cover bolts.'),
    ).toEqual(['put-back action Action removed: install cover bolt, “Put in the 8 cover bolts”']);
  });

  test('an action that only went into another step is not gone', () => {
    const { changes } = redlineOf(manual, {
      ...manual,
      [path]: text
        .replace('3. :install[Put in the 8 cover bolts]{item=cover-bolt}.', '3. Clean the holes.')
        .replace('4. :torque', '4. :install[Put in the 8 cover bolts]{item=cover-bolt}. :torque'),
    });
    expect(changes.map(({ kind, field }) => [kind, field])).toContainEqual(['action', 'place']);
    expect(changes.map(({ risk }) => risk)).not.toContain('put-back');
  });

  test('a step more', () => {
    expect(job('4. :torque', '4. Wipe the cover clean.\n5. :torque')).toEqual([
      'work step Step added: “Wipe the cover clean.”',
    ]);
  });

  test.for([
    [
      'install[Put in the 8 cover bolts]{item=cover-bolt}',
      'install[Put in the 8 cover bolts]{item=cover-bolt qty=6}',
      'put-back quantity install cover bolt, pieces: all → 6',
    ],
    ['{item=seal new}', '{item=seal}', 'joint detail install seal, new: yes → nothing'],
    [
      '{item=cover with=lifting-eye}',
      '{item=cover}',
      'record detail remove top cover, with: lifting-eye → nothing',
    ],
    [
      '{item=cover-bolt}.\n5.',
      '{item=cover-bolt value="45 N·m"}.\n5.',
      'joint value torque cover bolt, value: nothing → 45 N·m',
    ],
    [
      '{item=seal}.',
      '{item=seal when="feed = ram"}.',
      'order machines remove seal is for fewer machines: all machines → feed = ram',
    ],
    [' needs=bolts-out', '', 'order needs No longer needs step bolts-out before it'],
    ['time="5 min"', 'time="8 min"', 'record time Time: 5 min → 8 min'],
    ['time="5 min"', 'time="300 s"', 'unit unit The same time in another unit: 5 min → 300 s'],
    [
      'people=2 needs',
      'people=2 tools=lifting-eye needs',
      'record tool With lifting eye in the list of tools and consumables',
    ],
    [
      '2. :install[Lower',
      '2. ::perform{procedure=yearly-service}\n3. :install[Lower',
      'work step Step added: “job yearly-service”',
    ],
    [
      'people: 1',
      'people: 1\nstarts: { mains: isolated }',
      'order contract Starts with mains: as it should be → isolated',
    ],
    [
      'people: 1',
      'people: 1\nleaves: { mains: isolated }',
      'put-back contract Leaves mains: as it should be → isolated',
    ],
    [
      'people: 1',
      'people: 1\nwhen: feed = ram',
      'order machines It is for fewer machines: all machines → feed = ram',
    ],
    ['revision: 1', 'revision: 2', 'record procedure-field revision: 1 → 2'],
    [
      'title: Change the seal',
      'title: Replace the seal',
      'words procedure-field title: Change the seal → Replace the seal',
    ],
    [
      'Pull the old seal out',
      'Draw the old seal out',
      'words words Words changed: “Pull the old seal out of its groove.” → “Draw the old seal out of its groove.”',
    ],
  ])('%s → %s', ([from = '', to = '', told]) => {
    expect(job(from, to)).toEqual([told]);
  });
});

describe('order', () => {
  test('a step that moved is one change, however many it passed', () => {
    const [front = '', a = '', b = '', c = '', d = '', ...rest] = steps;
    const removal = d.split('\n## ');
    const order = [`${removal[0]}`, a, b, `${c}\n## ${removal[1]}`];
    const { changes } = redlineOf(manual, {
      ...manual,
      [path]: [front, ...order, ...rest].join(''),
    });
    expect(toldOf(changes)).toEqual([
      'protection step-moved Step moved earlier: step 4 → step 1 (remove), now before isolate mains supply',
    ]);
  });

  test('a step that isolates and comes later protects less', () => {
    const [front = '', a = '', b = '', ...rest] = steps;
    const { changes } = redlineOf(manual, { ...manual, [path]: [front, b, a, ...rest].join('') });
    expect(changes).toMatchObject([{ kind: 'step-moved', risk: 'protection' }]);
  });

  test('an id of a step that changed with all that name it is no change', () => {
    const after = { ...manual, [path]: text.replaceAll('bolts-out', 'cover-loose') };
    expect(redlineOf(manual, after).changes).toEqual([]);
  });
});

describe('what the technician finds and the way back', () => {
  test('a step that is now only done on one way', () => {
    expect(
      job(
        '2. :install[Lower the cover onto its dowels]{item=cover}.',
        '2. Look at the dowels.\n\n   :::if[a dowel is bent]\n   Straighten it.\n   :::\n\n   :install[Lower the cover onto its dowels]{item=cover}.',
      ),
    ).toEqual([expect.stringMatching(/^words words/)]);
  });

  test('a written-out way back that is gone', () => {
    const reversed = {
      ...manual,
      [path]: `${text.split('## Installation')[0]}## Installation\n\n::reverse{of=removal}\n`,
    };
    const gone = {
      ...manual,
      [path]: `${text.split('## Installation')[0]}## Installation\n\nAll parts go in.\n`,
    };
    expect(toldOf(redlineOf(reversed, gone).changes)).toContain(
      'put-back reverse The written-out way back of removal removed',
    );
    expect(
      redlineOf(reversed, {
        ...reversed,
        [path]: (reversed[path] ?? '').replace('{of=removal}', '{of=removal except=seal}'),
      }).changes,
    ).toMatchObject([
      { kind: 'reverse', before: 'everything', after: 'everything except seal', risk: 'put-back' },
    ]);
  });
});

describe('waivers', () => {
  const waived = (waiver: string) =>
    withEdits(['job', '4. :remove[Pull', `${waiver}\n4. :remove[Pull`]);
  const wide = (waiver: string) => withEdits(['job', '## Removal', `${waiver}\n## Removal`]);
  const until = (day: string): string =>
    `   :::waive{rule=left-out${day}}\n   The maker says so.\n   :::\n`;

  test('one more', () => {
    expect(redlineOf(manual, waived(until(''))).changes).toMatchObject([
      { kind: 'waiver', risk: 'proof', field: 'left-out', after: 'in a step' },
    ]);
    expect(redlineOf(waived(until('')), manual).changes).toMatchObject([{ risk: 'record' }]);
  });

  test('longer, and for the whole procedure', () => {
    const [short, long] = [' until=2027-01-01', ' until=2028-01-01'];
    expect(redlineOf(waived(until(short)), waived(until(long))).changes).toMatchObject([
      { kind: 'waiver', direction: 'wider', risk: 'proof' },
    ]);
    expect(
      redlineOf(waived(until('')), wide(until('').replaceAll('   ', ''))).changes,
    ).toMatchObject([{ kind: 'waiver', direction: 'wider', after: 'in the whole procedure' }]);
    expect(redlineOf(waived(until(long)), waived(until(short))).changes).toMatchObject([
      { direction: 'narrower', risk: 'record' },
    ]);
  });
});

describe('procedures', () => {
  test('one that came, one that went', () => {
    const { [path]: _, ...without } = manual;
    expect(redlineOf(manual, without).changes).toMatchObject([
      {
        kind: 'procedure',
        procedure: 'change-seal',
        risk: 'put-back',
        touches: [{ procedure: 'yearly-service' }],
      },
    ]);
    expect(redlineOf(without, manual).changes).toMatchObject([{ kind: 'procedure', risk: 'work' }]);
  });

  test('one with another id, performed by its new one', () => {
    const after = Object.fromEntries(
      Object.entries(manual).map(([file, content]) => [
        file,
        content.replaceAll('change-seal', 'renew-seal'),
      ]),
    );
    expect(toldOf(redlineOf(manual, after).changes)).toEqual([
      'record procedure-id Id of the procedure: change-seal → renew-seal',
    ]);
  });

  test('what is performed, and how often the sheet was revised', () => {
    const { procedures } = edited(['job', 'time="5 min"', 'time="6 min"']);
    expect(procedures).toEqual([
      {
        id: 'change-seal',
        title: 'Change the seal',
        revision: { before: '1', after: '1' },
        changes: 1,
        performedBy: ['yearly-service'],
      },
    ]);
  });

  test('findings that came and went', () => {
    const { findings } = edited([
      'job',
      '4. :torque[Torque the cover bolts crosswise]{item=cover-bolt}.\n',
      '',
    ]);
    expect(findings.new.map(({ rule }) => rule)).toContain('never-torqued');
    expect(findings.gone).toEqual([]);
  });
});
