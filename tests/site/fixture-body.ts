import {
  act,
  box,
  crew,
  detail,
  hazard,
  list,
  mark,
  phase,
  record,
  stages,
  step,
  steps,
  value,
} from './fixture-markup.ts';

/* Bodies of the fixture's sheets: an invented log splitter. Values are made up for the layout; no advice. */

const wedge = hazard(
  'danger',
  'The wedge can move under stored pressure',
  'Crushing or amputation of hands',
  'Stop the engine, work the lever through both ends of its travel and hang your lock on the key switch before you reach past the guard.',
);

const readingTable =
  '<table><thead><tr><th>Place</th><th>New</th><th>Limit</th></tr></thead><tbody><tr><td>A, next to the gland</td><td>40.00 mm (1.575 in)</td><td>39.92 mm (1.572 in)</td></tr><tr><td>B, mid stroke</td><td>40.00 mm (1.575 in)</td><td>39.90 mm (1.571 in)</td></tr></tbody></table>';

export const makeSafeBody = phase(
  'make-safe',
  'Make safe',
  steps(
    step('1', `${wedge}<p>${act('Lower the wedge')} until it rests on the foot plate.</p>`),
    step(
      '2',
      `<p>${act('Turn the key switch off')} and hang your lock on it.</p>`,
      box('reading', 'key switch', `<p>Read: ${record('lock number: value read')}</p>`),
      crew('5 min'),
    ),
    step(
      '3',
      `<p>${act('Work the control lever')} through both ends of its travel, three times.</p>`,
    ),
  ),
);

const removal = steps(
  step(
    '1',
    '<div class="reference"><p>Do <a href="../../procedures/make-safe/index.html">Make the log splitter safe</a> (LS-22-001), 3 steps, then come back here.</p><p class="leaves">It leaves key switch: isolated; wedge: lowered.</p></div>',
  ),
  step(
    '2',
    `${hazard('warning', 'Hot hydraulic oil', 'Burns to skin and eyes', 'Let the oil cool below 50 °C (122 °F) and wear goggles and long gloves.')}<p>${act('Slide the <a class="item" href="../../machines/log-splitter/index.html#drip-tray">drip tray</a>')} under the tank.</p>`,
    box('tools', 'Tools', list('drip tray, 45 L')),
  ),
  step(
    '3',
    `<p>${act('Take out the drain plug')} and ${act('let the oil run into the tray')}.</p><p>Look at the oil that runs out. Grey or milky oil holds water: write it on the job card and change the filter as well.</p>`,
    box(
      'fluid',
      'Out: hydraulic oil',
      value('38 L', '10.0 US gal'),
      '<p class="dispose">Collect the old oil for recycling</p>',
    ),
  ),
  step(
    '4',
    `<p>${act('Disconnect both ram hoses')} and ${act('cap them')}.</p>${steps(
      step('4.1', `<p>${act('Mark the upper hose')} with tape.</p>`),
      step(
        '4.2',
        `<p>${act('Undo the union nuts')} with two spanners, one to hold the fitting.</p>`,
        box('tools', 'Tools', list('open spanner, 27 mm', 'open spanner, 30 mm')),
      ),
    )}`,
  ),
  step(
    '5',
    `${hazard('caution', 'The ram is heavy', 'Strained back, crushed toes', 'Lift it with two people or with the sling.')}<p>${act('Remove the 8 gland bolts')} and ${act('lift the ram out')} onto the bench.</p>`,
    box('mass', 'ram', value('34 kg', '75 lb')),
    mark('discard', 'Discard', 'gland seal'),
    box('tools', 'Tools', list('socket, 18 mm', 'lifting sling, 100 kg')),
    crew('2 people, 20 min'),
  ),
);

const inspection = steps(
  step(
    '6',
    `<p>${act('Measure the rod')} at both places.</p><figure><img src="../../figures/rod.svg" alt="The rod with the places A and B marked, A nearest the gland" loading="lazy"><figcaption><p>Where to measure the rod</p></figcaption></figure>${readingTable}`,
    box(
      'reading',
      'rod',
      value('39.90 mm', '1.571 in'),
      `<p>Read: ${record('rod: value read', ' inputmode="decimal" data-low="49.9" data-high="50" data-unit="mm"')}</p>`,
    ),
  ),
  step(
    '7',
    `<div class="branch"><div class="way" role="group"><p class="condition">If the rod is below its limit at any place:</p><p>${act('Replace the rod')}; go no further with the old one.</p></div><div class="way" role="group"><p class="condition">Or, if it is sound:</p><p>Go on.</p></div></div>`,
  ),
);

const reassembly = steps(
  step(
    '8',
    `${hazard('notice', 'Grit on the new seal', 'The seal leaks within hours', 'Wipe the bore with a lint-free cloth and oil the seal before it goes in.')}<p>${act('Fit a new gland seal')}, lip towards the oil.</p>`,
    mark('new', 'New', 'gland seal'),
    box('consumables', 'Use', list('lint-free cloth')),
  ),
  step(
    '9',
    `<p>${act('Lift the ram in')} and ${act('fit the 8 gland bolts')} finger tight.</p>`,
    crew('2 people'),
  ),
  step(
    '10',
    `<p>${act('Torque the 8 gland bolts')} crosswise, in two stages.</p>`,
    box(
      'torque',
      'gland bolts × 8',
      stages(['40 N·m', '30 lbf·ft'], ['85 N·m', '63 lbf·ft']),
      detail('M12, class 8.8, threads oiled'),
    ),
  ),
  step(
    '11',
    `<p class="only">Only for start = electric</p><p class="needs">Only after <a href="#step-10">step 10</a></p><p>${act('Connect the battery lead')}.</p>`,
    box('torque', 'terminal nut', value('9 N·m', '80 lbf·in')),
  ),
  step(
    '12',
    `<p>${act('Fit the drain plug')} with a new washer and ${act('torque it')}.</p>`,
    box('torque', 'drain plug', value('45 N·m', '33 lbf·ft'), detail('M18 × 1.5')),
  ),
  step(
    '13',
    `<p>${act('Fill the tank')} through the strainer, up to the middle of the sight glass.</p>`,
    box('fluid', 'In: hydraulic oil', value('38 L', '10.0 US gal'), detail('ISO VG 46')),
  ),
);

export const sealBody =
  phase('removal', 'Removal', removal) +
  phase('inspection', 'Inspection', inspection) +
  phase('reassembly', 'Reassembly', reassembly);

/** A long run of phases and steps of uneven length, so that print has pages to break at all kinds of places. */
export const longBody = Array.from({ length: 10 }, (_, row) =>
  phase(
    `row-${row + 1}`,
    `Row ${row + 1} of the hose clips`,
    steps(...Array.from({ length: 4 }, (_, i) => checkStep(4 * row + i + 1))),
  ),
).join('');

function checkStep(number: number): string {
  const guard =
    number % 4 === 1
      ? hazard(
          'warning',
          'Rotating pump coupling',
          'Entangled clothing, broken arm',
          'Keep the guard on while the engine runs.',
        )
      : '';
  const cracks = '<p>Look for cracks at the screw.</p>'.repeat(number % 3);
  const torque =
    number % 3 === 1 ? [box('torque', `hose clip ${number}`, value('4.5 N·m', '40 lbf·in'))] : [];
  return step(
    String(number),
    `${guard}<p>${act(`Check hose clip ${number}`)} for wear.</p>${cracks}<p>Wipe it clean and feel for play.</p>`,
    ...torque,
  );
}
