import type { ManualName } from './manual-from.ts';

/** One finding, with the first words of its line, which stand once in its file. */
export interface Expected {
  readonly rule: string;
  readonly at: string;
  /** Where it is not the file that was edited. */
  readonly file?: string;
  readonly when?: string;
}

/** A sound manual with one slip, and everything that must be found in it. */
export interface BrokenCopy {
  readonly slip: string;
  readonly manual: ManualName;
  readonly file: string;
  readonly from: string;
  readonly to: string;
  readonly found: readonly Expected[];
}

const belt = { manual: 'lathe', file: 'procedures/replace-drive-belt.md' } as const;
const chuck = { manual: 'lathe', file: 'procedures/change-chuck.md' } as const;
const oil = { manual: 'lathe', file: 'procedures/change-headstock-oil.md' } as const;
const tailstock = { manual: 'lathe', file: 'procedures/align-tailstock.md' } as const;
const lathe = { manual: 'lathe', file: 'machines/bench-lathe.yaml' } as const;
const opening = { manual: 'hand-pump', file: 'procedures/open-pump.md' } as const;
const cups = { manual: 'hand-pump', file: 'procedures/replace-cup-leathers.md' } as const;
const pump = { manual: 'hand-pump', file: 'machines/hand-pump.yaml' } as const;
const chlorine = { manual: 'hand-pump', file: 'procedures/disinfect-well.md' } as const;

export const brokenCopies: readonly BrokenCopy[] = [
  {
    slip: 'the belt cover is not put back',
    ...belt,
    from: '5. :install[Put the belt cover on]{item=belt-cover}.\n',
    to: '',
    found: [{ rule: 'left-out', at: '2. :remove[Lift' }],
  },
  {
    slip: 'the cover screws are not put back',
    ...belt,
    from: '6. :install[Put in the 3 belt cover screws]{item=belt-cover-screw}.\n',
    to: '',
    found: [{ rule: 'left-out', at: '1. :remove{item' }],
  },
  {
    slip: 'one screw of three is put back',
    ...belt,
    from: 'Put in the 3 belt cover screws]{item=belt-cover-screw}',
    to: 'Put in 1 belt cover screw]{item=belt-cover-screw qty=1}',
    found: [{ rule: 'left-out', at: '1. :remove{item' }],
  },
  {
    slip: 'the cover screws are never torqued',
    ...belt,
    from: '7. :torque{item=belt-cover-screw with=torque-wrench}.\n   ::step{time="2 min"}\n',
    to: '',
    found: [{ rule: 'never-torqued', at: '6. :install[Put' }],
  },
  {
    slip: 'the belt is taken off twice',
    ...belt,
    from: '5. :discard',
    to: '5. :remove[Take the drive belt off]{item=drive-belt}.\n6. :discard',
    found: [{ rule: 'out-twice', at: '5. :remove[Take' }],
  },
  {
    slip: 'the old belt goes back',
    ...belt,
    from: '{item=drive-belt new}',
    to: '{item=drive-belt}',
    found: [{ rule: 'old-part-back', at: ':install[Lay a' }],
  },
  {
    slip: 'the belt comes off before its cover',
    ...belt,
    from: '2. :remove[Lift the belt cover off]{item=belt-cover}.\n',
    to: '',
    found: [
      { rule: 'blocked', at: '3. :loosen[Loosen' },
      { rule: 'blocked', at: '4. :remove[Push' },
      { rule: 'in-without-out', at: '5. :install[Put' },
    ],
  },
  {
    slip: 'the hazard of the belt is gone',
    ...belt,
    from: '2. ::hazard{of=belt-pinch}\n\n   :install[Lay',
    to: '2. :install[Lay',
    found: [{ rule: 'hazard-missing', at: '2. :install[Lay' }],
  },
  {
    slip: 'the lathe is not made safe',
    ...belt,
    from: '1. ::perform{procedure=make-safe}',
    to: '1. Clean the lathe.',
    found: [
      { rule: 'energy-live', at: '1. :remove{item' },
      { rule: 'energy-live', at: '3. :loosen[Loosen' },
      { rule: 'energy-live', at: '4. :remove[Push' },
      { rule: 'start-not-met', at: '1. ::perform{procedure' },
    ],
  },
  {
    slip: 'the lathe is not returned to service',
    ...belt,
    from: '\n## Completion\n\n1. ::perform{procedure=return-to-service}\n',
    to: '',
    found: [
      { rule: 'aid-left-in', at: '1. ::perform{procedure' },
      { rule: 'left-isolated', at: '1. ::perform{procedure' },
    ],
  },
  {
    slip: 'a torque in words that is not the torque',
    ...belt,
    from: 'Torque the 4 motor bolts]',
    to: 'Torque the 4 motor bolts to 25 N·m]',
    found: [{ rule: 'torque-disagrees', at: ':torque[Torque' }],
  },
  {
    slip: 'vague torque',
    ...belt,
    from: '5. :install[Put the belt cover on]{item=belt-cover}.',
    to: '5. :install[Put the belt cover on]{item=belt-cover}. Tighten everything securely.',
    found: [
      { rule: 'untracked-action', at: '5. :install[Put' },
      { rule: 'vague-torque', at: '5. :install[Put' },
    ],
  },
  {
    slip: 'an action without directive',
    ...belt,
    from: '1. Clean the grooves',
    to: '1. Remove the belt cover. Clean the grooves',
    found: [{ rule: 'untracked-action', at: '1. Remove the belt' }],
  },
  {
    slip: 'a link that leads nowhere',
    manual: 'lathe',
    file: 'procedures/make-safe.md',
    from: '(return-to-service.md)',
    to: '(return-to-servce.md)',
    found: [{ rule: 'broken-link', at: 'The opposite procedure' }],
  },
  {
    slip: 'a link to a section that is not there',
    manual: 'hand-pump',
    file: 'procedures/replace-foot-valve-rubber.md',
    from: 'open-pump.md#opening',
    to: 'open-pump.md#opn',
    found: [{ rule: 'broken-link', at: 'The steps at the' }],
  },
  {
    slip: 'a count in words',
    ...belt,
    from: 'Loosen the 4 motor bolts',
    to: 'Loosen the 3 motor bolts',
    found: [{ rule: 'count-in-words', at: '3. :loosen[Loosen' }],
  },
  {
    slip: 'the hazard comes after the step',
    ...belt,
    from: '2. ::hazard{of=belt-pinch}\n\n   :install[Lay a new drive belt into the grooves]{item=drive-belt new}.\n3. Push',
    to: '2. :install[Lay a new drive belt into the grooves]{item=drive-belt new}.\n3. ::hazard{of=belt-pinch}\n\n   Push',
    found: [{ rule: 'hazard-late', at: '3. ::hazard{of' }],
  },
  {
    slip: 'a unit misspelt',
    ...belt,
    from: '{item=drive-belt with=belt-gauge}',
    to: '{item=drive-belt with=belt-gauge value="6..8 milimeters"}',
    found: [{ rule: 'unit-unknown', at: '3. Push the motor' }],
  },
  {
    slip: 'the motor bolts stay loose',
    ...belt,
    from: '   :torque[Torque the 4 motor bolts]{item=motor-bolt with=torque-wrench}.\n\n   :::torque{item=motor-bolt}\n   :::\n',
    to: '   Look at the bolts.\n',
    found: [{ rule: 'left-loose', at: '3. :loosen[Loosen' }],
  },
  {
    slip: 'more are torqued than there are',
    ...belt,
    from: 'Torque the 4 motor bolts]{item=motor-bolt with',
    to: 'Torque the 5 motor bolts]{item=motor-bolt qty=5 with',
    found: [{ rule: 'count-mismatch', at: ':torque[Torque' }],
  },
  {
    slip: 'a torque in newtons',
    ...belt,
    from: 'motor bolts]{item=motor-bolt with',
    to: 'motor bolts]{item=motor-bolt value="22 N" with',
    found: [{ rule: 'unit-kind', at: ':torque[Torque' }],
  },
  {
    slip: 'an unknown item',
    ...belt,
    from: '{item=belt-cover}.\n3.',
    to: '{item=belt-covr}.\n3.',
    found: [
      { rule: 'unknown-item', at: '2. :remove[Lift' },
      { rule: 'blocked', at: '3. :loosen[Loosen' },
      { rule: 'blocked', at: '4. :remove[Push' },
      { rule: 'in-without-out', at: '5. :install[Put' },
    ],
  },

  {
    slip: 'the threaded chuck stays loose',
    ...chuck,
    from: '3. :torque[Torque the 2 chuck clamp screws]{item=chuck-clamp-screw with=torque-wrench}.\n   ::step{when="spindle = threaded" time="2 min"}\n',
    to: '',
    found: [{ rule: 'left-loose', at: '2. :loosen[Loosen', when: 'spindle = threaded' }],
  },
  {
    slip: 'the nuts of the flanged chuck are only put on',
    ...chuck,
    from: ' :torque[Then torque them in two stages]{item=chuck-nut with=torque-wrench}.\n\n   :::torque{item=chuck-nut}\n   :::\n',
    to: '\n',
    found: [{ rule: 'never-torqued', at: ':install[Screw', when: 'spindle = flanged' }],
  },
  {
    slip: 'the board stays in the lathe',
    ...chuck,
    from: '4. :withdraw[Take the chuck board away]{item=chuck-board}.\n',
    to: '',
    found: [{ rule: 'aid-left-in', at: '2. :fit[Lay the' }],
  },
  {
    slip: 'the wrong variant',
    ...chuck,
    from: '   ::step{when="spindle = threaded" time="1 min"}',
    to: '   ::step{when="spindle = flanged" time="1 min"}',
    found: [
      { rule: 'item-absent', at: '2. :loosen[Loosen', when: 'spindle = flanged' },
      { rule: 'still-held', at: ':remove[Draw the', when: 'spindle = threaded' },
      { rule: 'in-without-out', at: '3. :torque[Torque', when: 'spindle = threaded' },
    ],
  },

  {
    slip: 'the oil is not filled in',
    ...oil,
    from: '3. :fill[Fill in new oil up to the middle of the sight glass]{item=gear-oil}.\n   ::step{time="5 min"}\n',
    to: '',
    found: [{ rule: 'left-drained', at: '3. :remove[Unscrew' }],
  },
  {
    slip: 'the oil is filled before the plug is in',
    ...oil,
    from: '2. :install[Screw the oil drain plug in]{item=oil-drain-plug}. :torque[Torque it]{item=oil-drain-plug with=torque-wrench}.\n3. :fill[Fill in new oil up to the middle of the sight glass]{item=gear-oil}.\n   ::step{time="5 min"}\n',
    to: '2. :fill[Fill in new oil up to the middle of the sight glass]{item=gear-oil}.\n   ::step{time="5 min"}\n3. :install[Screw the oil drain plug in]{item=oil-drain-plug}. :torque[Torque it]{item=oil-drain-plug with=torque-wrench}.\n',
    found: [{ rule: 'fill-open', at: '2. :fill[Fill in' }],
  },
  {
    slip: 'the old plug washer goes back',
    ...oil,
    from: '{item=oil-drain-washer new}',
    to: '{item=oil-drain-washer}',
    found: [{ rule: 'old-part-back', at: '1. :install[Put' }],
  },
  {
    slip: 'the drip tray stays',
    ...oil,
    from: '5. :withdraw[Take the drip tray away]{item=drip-tray}.\n   ::step{consumables=lint-free-cloth}\n',
    to: '',
    found: [{ rule: 'aid-left-in', at: '1. :fit[Put the' }],
  },
  {
    slip: 'a step that is not there',
    ...tailstock,
    from: '{needs=in-line}',
    to: '{needs=in-lin}',
    found: [{ rule: 'unknown-step', at: '::step{needs=in' }],
  },
  {
    slip: 'a step that comes later',
    ...tailstock,
    from: '   ::step{time="5 min"}\n\n## Adj',
    to: '   ::step{needs=in-line time="5 min"}\n\n## Adj',
    found: [{ rule: 'needs-later', at: '::step{needs=in-line time' }],
  },
  {
    slip: 'the clamp nut stays loose',
    ...tailstock,
    from: '4. :torque[Torque the tailstock clamp nut]{item=tailstock-clamp-nut with=torque-wrench}.\n   ::step{needs=in-line}\n',
    to: '',
    found: [{ rule: 'left-loose', at: '1. :loosen[Loosen' }],
  },

  {
    slip: 'a pattern for four nuts where there are three',
    ...lathe,
    from: 'pattern: { circle: 3 }',
    to: 'pattern: { circle: 4 }',
    found: [{ rule: 'pattern-count', at: 'pattern: { circle' }],
  },
  {
    slip: 'a count in the catalogue that the steps do not have',
    ...lathe,
    from: 'count: 3, thread: M6',
    to: 'count: 4, thread: M6',
    found: [
      { rule: 'count-in-words', file: 'procedures/replace-drive-belt.md', at: '6. :install[Put' },
    ],
  },
  {
    slip: 'a torque is dropped',
    ...lathe,
    from: ', thread: M14x1.5, torque: 25 N·m',
    to: ', thread: M14x1.5',
    found: [
      {
        rule: 'torque-missing',
        file: 'procedures/change-headstock-oil.md',
        at: '2. :install[Screw',
      },
    ],
  },
  {
    slip: 'a torque in pounds',
    ...lathe,
    from: 'M14x1.5, torque: 25 N·m',
    to: 'M14x1.5, torque: 25 lb',
    found: [{ rule: 'unit-kind', at: 'oil-drain-plug: { name' }],
  },
  {
    slip: 'a capacity in millimetres',
    ...lathe,
    from: 'capacity: 1.2 L',
    to: 'capacity: 1.2 mm',
    found: [{ rule: 'unit-kind', at: 'capacity: 1.2 mm' }],
  },
  {
    slip: 'the harm of a hazard is empty',
    ...lathe,
    from: 'harm: Crushed fingers',
    to: 'harm: ""',
    found: [{ rule: 'yaml-shape', at: 'harm: ""' }],
  },
  {
    slip: 'a second key of one name',
    ...lathe,
    from: '  drip-tray: {',
    to: '  test-bar: { name: bar }\n  drip-tray: {',
    found: [{ rule: 'yaml-broken', at: 'test-bar: { name: test' }],
  },

  {
    slip: 'the counterweight of deep pumps stays off',
    ...opening,
    from: ':install[Lift the counterweight on]{item=counterweight}. :install[Put in the 2 counterweight bolts]{item=counterweight-bolt}. :torque[Torque both counterweight bolts]{item=counterweight-bolt with=torque-wrench}.',
    to: 'Look at the handle.',
    found: [{ rule: 'left-out', at: ':remove{item=counterweight', when: 'depth = deep' }],
  },
  {
    slip: 'the rod clamp stays on the rods',
    ...opening,
    from: '9. :withdraw[Take the rod clamp off]{item=rod-clamp}.\n',
    to: '',
    found: [{ rule: 'aid-left-in', at: '2. :install[Let' }],
  },
  {
    slip: 'the head goes on over the well cover',
    ...opening,
    from: '1. :withdraw[Take the well cover away]{item=well-cover}.\n',
    to: '',
    found: [
      { rule: 'aid-left-in', at: '10. :fit[Lay the' },
      { rule: 'aid-in-way', at: ':install[Hoist' },
      {
        rule: 'aid-left-in',
        file: 'procedures/replace-foot-valve-rubber.md',
        at: '11. :fit[Lay the',
      },
    ],
  },
  {
    slip: 'the head bolts come out twice',
    ...opening,
    from: '7. :remove{item=head-bolt}.\n',
    to: '7. :remove{item=head-bolt}.\n8. :remove{item=head-bolt}.\n',
    found: [{ rule: 'out-twice', at: '8. :remove{item' }],
  },
  {
    slip: 'the pump is not closed',
    ...cups,
    from: '11. ::perform{procedure=open-pump part=closing}\n',
    to: '',
    found: [
      { rule: 'left-out', at: '::perform{procedure=open-pump part=opening}' },
      {
        rule: 'left-out',
        at: '::perform{procedure=open-pump part=opening}',
        when: 'depth = deep',
      },
      { rule: 'aid-left-in', at: '::perform{procedure=open-pump part=opening}' },
    ],
  },
  {
    slip: 'the pump is not opened',
    ...cups,
    from: '2. ::perform{procedure=open-pump part=opening}\n',
    to: '',
    found: [
      { rule: 'blocked', at: '3. :remove[Screw' },
      { rule: 'blocked', at: '4. :remove[Pull' },
      { rule: 'in-without-out', at: '11. ::perform{procedure' },
      { rule: 'in-without-out', at: '11. ::perform{procedure', when: 'depth = deep' },
    ],
  },
  {
    slip: 'one cup leather is new',
    ...cups,
    from: 'Slide 2 new cup leathers on with their lips up]{item=cup-leather new}',
    to: 'Slide 1 new cup leather on with its lips up]{item=cup-leather qty=1 new}',
    found: [{ rule: 'left-out', at: '5. :remove[Peel' }],
  },
  {
    slip: 'the hazard of the chlorine is gone',
    ...chlorine,
    from: '2. ::hazard{of=chlorine}\n\n   :apply',
    to: '2. :apply',
    found: [{ rule: 'hazard-missing', at: '2. :apply[Pour' }],
  },
  {
    slip: 'the handle stays locked',
    manual: 'hand-pump',
    file: 'procedures/return-to-use.md',
    from: '2. :set[Hang the handle chain up]{item=handle-chain to=hung-up}.\n',
    to: '',
    found: [
      {
        rule: 'control-away',
        file: 'procedures/replace-cup-leathers.md',
        at: '1. ::perform{procedure=take',
      },
      {
        rule: 'control-away',
        file: 'procedures/replace-foot-valve-rubber.md',
        at: '1. ::perform{procedure',
      },
      { rule: 'control-away', at: 'handle-chain: locked' },
    ],
  },
  {
    slip: 'a promise that the steps do not keep',
    ...chlorine,
    from: '  handle-chain: locked\n---',
    to: '  handle-chain: hung-up\n---',
    found: [{ rule: 'promise-broken', at: 'handle-chain: hung' }],
  },
  {
    slip: 'more parts in the catalogue than go in',
    ...pump,
    from: 'count: 2, single-use: true, behind: cup',
    to: 'count: 3, single-use: true, behind: cup',
    found: [
      { rule: 'count-in-words', file: 'procedures/replace-cup-leathers.md', at: '5. :remove[Peel' },
      {
        rule: 'count-in-words',
        file: 'procedures/replace-cup-leathers.md',
        at: '8. :install[Slide',
      },
    ],
  },
  {
    slip: 'a torque dropped',
    ...pump,
    from: 'class: 8.8, torque: 50 N·m',
    to: 'class: 8.8',
    found: [
      {
        rule: 'torque-missing',
        file: 'procedures/replace-cup-leathers.md',
        at: '10. :install[Screw',
      },
    ],
  },
];
