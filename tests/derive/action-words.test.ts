import { describe, expect, test } from 'vitest';
import { verbSchema } from '../../schemas/directives.ts';
import { actionWords } from '../../src/derive/index.ts';
import { allActions } from '../../src/link/index.ts';
import { linkedManual, procedureIn } from '../render/linked-manual.ts';

const machine = `machine: m
name: M
fasteners:
  bolt: { name: anvil bolt, count: 8, thread: M12, torque: 95 N·m }
  nut: { name: nut, torque: [20 N·m, 60 N·m] }
  knob: { name: knob, tightness: hand-tight }
parts:
  anvil: { name: anvil }
  knife: { name: knife, count: 4 }
  shoe: { name: brake shoe, each: [left, right] }
  stud: { name: wheel stud, count: 5, each: [left, right] }
connections: { hose: { name: return hose, type: hose } }
circuits: { oil: { name: hydraulic oil, fluid: ISO VG 46, capacity: 38 L, pressure: true } }
energy: { battery: { name: battery, type: electrical } }
controls: { brake: { name: parking brake, positions: [set, let-go], home: set } }
aids: { pin: { name: lock pin } }
consumables: { grease: { name: grease } }
`;

function words(directive: string): string {
  const manual = linkedManual({
    'manual.yaml': 'title: Words\nunits: { torque: [N·m, lbf·ft], volume: [L, US gal] }\n',
    'machines/m.yaml': machine,
    'p.md': `---\nprocedure: p\ntitle: P\n---\n\n1. ${directive}\n`,
  });
  const one = procedureIn(manual, 'p');
  const [action] = allActions(one.procedure);
  const item = action && one.item(action.item);
  if (action === undefined || item === undefined) throw new Error(`no action in ${directive}`);
  const { before, name, after } = actionWords(action, item, one, manual.manual.policy);
  return (before + name + after).replaceAll('\u00a0', ' ');
}

describe('words of an action from the catalogue', () => {
  test.each([
    [':remove{item=bolt}', 'Remove the 8 anvil bolts (M12)'],
    [':remove{item=bolt qty=4}', 'Remove 4 of the 8 anvil bolts (M12)'],
    [':install{item=bolt new}', 'Install 8 new anvil bolts (M12)'],
    [':install{item=anvil new}', 'Install a new anvil'],
    [':replace{item=knife}', 'Replace the 4 knives'],
    // 95 N·m / 1.355818 = 70.07 lbf·ft (NIST SP 811 (2008), B.8).
    [':torque{item=bolt}', 'Torque the 8 anvil bolts (M12) to 95 N·m (70 lbf·ft)'],
    [
      ':torque{item=nut}',
      'Torque the nut in 2 stages: 20 N·m (15 lbf·ft), then 60 N·m (44 lbf·ft)',
    ],
    [':tighten{item=knob}', 'Tighten the knob by hand'],
    [':loosen{item=nut}', 'Loosen the nut'],
    [':remove{item=shoe}', 'Remove the 2 brake shoes (left and right)'],
    [':remove{item=shoe each=left}', 'Remove the brake shoe (left)'],
    [':install{item=shoe new}', 'Install 2 new brake shoes (left and right)'],
    [':remove{item=stud}', 'Remove the 5 wheel studs (on each: left, right)'],
    [':remove{item=stud qty=2}', 'Remove 2 of the 5 wheel studs (on each: left, right)'],
    [':remove{item=stud each=right}', 'Remove the 5 wheel studs (right)'],
    [':set-aside{item=anvil}', 'Set the anvil aside'],
    [':return{item=anvil}', 'Put the anvil back in place'],
    [':disconnect{item=hose}', 'Disconnect the return hose'],
    [':drain{item=oil}', 'Drain the hydraulic oil'],
    // 2 L / 3.785411784 = 0.53 US gal (NIST SP 811 (2008), B.8).
    [':drain{item=oil amount="2.0 L"}', 'Drain 2.0 L (0.53 US gal) of the hydraulic oil'],
    [':fill{item=oil}', 'Fill with hydraulic oil'],
    [':relieve{item=oil}', 'Relieve the pressure of the hydraulic oil'],
    [':isolate{item=battery}', 'Isolate the battery'],
    [':set{item=brake to=let-go}', 'Set the parking brake to let go'],
    [':fit{item=pin}', 'Fit the lock pin'],
    [':apply{item=grease}', 'Apply grease'],
    [':apply{item=bolt with=grease}', 'Apply grease to the 8 anvil bolts (M12)'],
    // 25.4 mm = 1 in (exact): 1.0 mm = 0.0394 in, a lower limit and so rounded up; 1.5 mm = 0.0591 in, an upper one and so down.
    [':measure{item=anvil value="1.0..1.5 mm"}', 'Measure the anvil: 1.0–1.5 mm (0.040–0.059 in)'],
  ])('%s', (directive, expected) => {
    expect(words(directive)).toBe(expected);
  });

  test.each(verbSchema.options)('%s has words', (verb) => {
    expect(words(`:${verb}{item=anvil to=x}`)).toMatch(/^[A-Z][^{}]*anvil/);
  });
});
