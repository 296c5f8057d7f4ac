import type { Book, FluidRow, PageLink, PullRow, Sheet, TorqueRow } from '../../src/render/book.ts';
import { longBody, makeSafeBody, sealBody } from './fixture-body.ts';
import { hazards, ramPicture, stock } from './fixture-lists.ts';

const sheet = (id: string, text: string): PageLink => ({
  href: `procedures/${id}/index.html`,
  text,
});
const item = (id: string, text: string): PageLink => ({
  href: `machines/log-splitter/index.html#${id}`,
  text,
});

const machine: PageLink = { href: 'machines/log-splitter/index.html', text: 'Log splitter LS-22' };
const makeSafe = sheet('make-safe', 'Make the log splitter safe');
const replaceSeal = sheet('replace-ram-seal', 'Replace the ram seal');
const checkHoses = sheet('check-hoses', 'Check the hose clips');

const torques: readonly TorqueRow[] = [
  {
    anchor: 'log-splitter-gland-bolt',
    item: item('gland-bolt', 'Gland bolt'),
    count: 8,
    instances: [],
    when: undefined,
    thread: 'M12',
    strength: 'class 8.8',
    threads: 'oiled',
    stages: ['40 N·m (30 lbf·ft)', '85 N·m (63 lbf·ft)'],
    byDefault: false,
    usedIn: [replaceSeal],
  },
  {
    anchor: 'log-splitter-drain-plug',
    item: item('drain-plug', 'Drain plug'),
    count: 1,
    instances: [],
    when: undefined,
    thread: 'M18 × 1.5',
    strength: undefined,
    threads: undefined,
    stages: ['45 N·m (33 lbf·ft)'],
    byDefault: false,
    usedIn: [replaceSeal],
  },
  {
    anchor: 'log-splitter-guard-bolt',
    item: item('guard-bolt', 'Guard bolt'),
    count: 4,
    instances: [],
    when: undefined,
    thread: 'M8',
    strength: 'class 8.8',
    threads: 'dry',
    stages: ['22 N·m (16 lbf·ft)'],
    byDefault: true,
    usedIn: [makeSafe, checkHoses],
  },
];

const fluids: readonly FluidRow[] = [
  {
    anchor: 'log-splitter-hydraulic-oil',
    item: item('hydraulic-oil', 'Hydraulic oil'),
    fluid: 'Hydraulic oil, ISO VG 46',
    when: undefined,
    capacity: '38 L (10.0 US gal)',
    mix: [],
    freezing: undefined,
    corrections: [],
    neverWith: ['engine coolant'],
    bleed: 'Run the ram out and in five times without a log',
    dispose: 'Collect the old oil and hand it in for recycling',
    usedIn: [replaceSeal],
  },
  {
    anchor: 'log-splitter-coolant',
    item: item('coolant', 'Engine coolant'),
    fluid: 'Ethylene glycol coolant, mixed with soft water',
    when: undefined,
    capacity: '6.2 L (1.6 US gal)',
    mix: [
      { name: 'concentrate', share: '50 %', volume: '3.1 L (0.8 US gal)' },
      { name: 'water', share: '50 %', volume: '3.1 L (0.8 US gal)' },
    ],
    freezing: {
      point: 'Freezes at about −37 °C (−35 °F)',
      source: 'Pure ethylene glycol and water, ASHRAE Handbook, Fundamentals.',
    },
    corrections: [
      {
        measured: '30 %',
        freezes: '−15 °C (5 °F)',
        replace: '1.8 L (0.48 US gal)',
        by: 'concentrate',
      },
    ],
    neverWith: [],
    bleed: undefined,
    dispose: undefined,
    usedIn: [],
  },
];

function pull(id: string, text: string, count: number | undefined, detail: string): PullRow {
  return {
    item: item(id, text),
    count,
    isMost: false,
    detail,
    containers: undefined,
    when: undefined,
  };
}

function pullFiles(id: string): Sheet['pullFiles'] {
  const file = (format: 'csv' | 'json', content: string) => ({
    href: `procedures/${id}/pull-list.${format}`,
    text: format.toUpperCase(),
    content,
  });
  return { csv: file('csv', `kind,item\r\ntool,${id}’s\r\n`), json: file('json', '{}\n') };
}

function forPrograms(id: string): Pick<Sheet, 'dataFile' | 'howTo'> {
  const href = `procedures/${id}/procedure.json`;
  const howTo = { '@context': 'https://schema.org', '@type': 'HowTo', name: `${id} </script>` };
  return {
    dataFile: { href, text: 'JSON', content: '{}\n' },
    howTo: JSON.stringify(howTo).replaceAll('<', '\\u003c'),
  };
}

const empty = {
  variants: undefined,
  summary: undefined,
  interval: undefined,
  crew: [],
  times: [],
  hazards: [],
  tools: [],
  parts: [],
  consumables: [],
  fluidPulls: [],
  waste: [],
  fluids: [],
  torques: [],
  starts: [],
  leaves: [],
  performs: [],
  followOn: [],
  orderHtml: '',
  performedBy: [],
  isContract: false,
  history: [],
} as const;

const sheets: readonly Sheet[] = [
  {
    ...empty,
    id: 'make-safe',
    pullFiles: pullFiles('make-safe'),
    ...forPrograms('make-safe'),
    href: makeSafe.href,
    title: makeSafe.text,
    system: 'General',
    documentNumber: 'LS-22-001',
    revision: '2',
    machine,
    people: 1,
    time: '8 min',
    times: [{ total: '8 min', parts: undefined, when: undefined }],
    steps: 3,
    stepCount: [3],
    codeHtml: '',
    bodyHtml: makeSafeBody,
    hazards: [
      {
        signal: 'danger',
        hazard: 'The wedge can move under stored pressure',
        harm: 'Crushing or amputation of hands',
        avoidHtml: '<p>Stop the engine, work the lever and hang your lock on the key switch.</p>',
        row: 'hazards/index.html#log-splitter-wedge-moves',
        when: undefined,
      },
    ],
    leaves: [
      { item: item('key-switch', 'Key switch'), state: 'isolated' },
      { item: item('wedge', 'Wedge'), state: 'lowered' },
    ],
    performedBy: [replaceSeal],
    isContract: true,
  },
  {
    ...empty,
    id: 'replace-ram-seal',
    pullFiles: pullFiles('replace-ram-seal'),
    ...forPrograms('replace-ram-seal'),
    href: replaceSeal.href,
    title: replaceSeal.text,
    system: 'Hydraulics',
    documentNumber: 'LS-22-040',
    revision: '3',
    machine,
    variants: 'engine petrol or diesel, start electric',
    summary: 'The gland seal of the ram leaks, or the ram creeps down under load.',
    interval: 'Every 1000 hours, or when the gland weeps',
    people: 2,
    crew: [
      {
        people: 2,
        steps: [
          { href: `${replaceSeal.href}#step-5`, text: '5' },
          { href: `${replaceSeal.href}#step-9`, text: '9' },
        ],
        time: '15 min',
        when: undefined,
      },
    ],
    time: '2 h 10 min to 2 h 40 min',
    times: [
      { total: '2 h 10 min', parts: undefined, when: 'engine = petrol' },
      {
        total: '2 h 40 min',
        parts:
          '2 h 20 min of work and 30 min of waits; 10 min of the waits are used for other steps',
        when: 'engine = diesel',
      },
    ],
    steps: 13,
    stepCount: [13],
    codeHtml:
      '<p class="code"><svg viewBox="0 0 10 10" role="img" aria-label="QR code"><path d="M1 1h8v8h-8z"/></svg><span>Is this the current revision?</span></p>',
    bodyHtml: sealBody,
    hazards: [
      {
        signal: 'danger',
        hazard: 'The wedge can move under stored pressure',
        harm: 'Crushing or amputation of hands',
        avoidHtml: '<p>Make the machine safe first.</p>',
        row: 'hazards/index.html#log-splitter-wedge-moves',
        when: undefined,
      },
      {
        signal: 'warning',
        hazard: 'Hot hydraulic oil',
        harm: 'Burns to skin and eyes',
        avoidHtml: '<p>Let the oil cool below 50 °C (122 °F) and wear goggles and long gloves.</p>',
        row: 'hazards/index.html#log-splitter-hot-oil',
        when: undefined,
      },
      {
        signal: 'caution',
        hazard: 'The ram is heavy',
        harm: 'Strained back, crushed toes',
        avoidHtml: '<p>Lift it with two people or with the sling.</p>',
        row: undefined,
        when: 'engine = diesel',
      },
      {
        signal: 'notice',
        hazard: 'Grit on the new seal',
        harm: 'The seal leaks within hours',
        avoidHtml: '<p>Wipe the bore with a lint-free cloth.</p>',
        row: undefined,
        when: undefined,
      },
    ],
    tools: [
      pull('drip-tray', 'Drip tray', undefined, '45 L'),
      pull('socket-18', 'Socket', undefined, '18 mm'),
      pull('sling', 'Lifting sling', 1, '100 kg'),
      pull('torque-wrench', 'Torque wrench', undefined, '20..100 N·m'),
    ],
    parts: [
      pull('gland-seal', 'Gland seal', 1, 'LS-3308, new'),
      pull('drain-washer', 'Drain plug washer', 1, 'new'),
      { ...pull('gland-bolt', 'Gland bolts', 8, 'M12'), isMost: true, when: 'if a thread is torn' },
    ],
    consumables: [pull('cloth', 'Lint-free cloth', undefined, 'as needed')],
    fluidPulls: [
      {
        ...pull('hydraulic-oil', 'Hydraulic oil', undefined, '38 L (10.0 US gal), ISO VG 46'),
        containers: '2 × 20 L',
      },
    ],
    fluids: fluids.slice(0, 1),
    waste: [
      {
        item: item('hydraulic-oil', 'Hydraulic oil'),
        volume: 'about 38 L (10.0 US gal)',
        dispose: 'Collect the old oil and hand it in for recycling',
      },
    ],
    torques: torques.slice(0, 2),
    starts: [{ item: item('wedge', 'Wedge'), state: 'lowered' }],
    performs: [makeSafe],
    followOn: [makeSafe],
    history: [
      { revision: '3', date: '2031-04-02', change: 'Second torque stage raised to 85 N·m.' },
      { revision: '2', date: '2030-11-19', change: 'Sling added; the ram is too heavy for one.' },
      { revision: '1', date: '2030-02-01', change: 'First issue.' },
    ],
  },
  {
    ...empty,
    id: 'check-hoses',
    pullFiles: pullFiles('check-hoses'),
    ...forPrograms('check-hoses'),
    href: checkHoses.href,
    title: checkHoses.text,
    system: 'Hydraulics',
    documentNumber: 'LS-22-041',
    revision: undefined,
    machine,
    people: 1,
    time: undefined,
    steps: 40,
    stepCount: [40],
    codeHtml: '',
    bodyHtml: longBody,
  },
];

/** A small invented manual, as the render room would hand it to the site. */
export const fixtureBook: Book = {
  machinesDiffer: { attributes: [], never: [] },
  figures: [{ from: 'figures/rod.svg', to: 'figures/rod.svg' }],
  title: 'Log splitter LS-22 workshop manual',
  language: 'en',
  edition: '4',
  issued: 'April 2031',
  publisher: 'Fernhollow Implements',
  address: 'https://manuals.example.org/ls-22/',
  draft: false,
  safetyHtml:
    '<p>Only trained people may do this work. Wear eye protection, safety boots and gloves that fit. Follow the lockout rules of your workplace; where they ask for more than this sheet, they come first.</p>',
  systems: [
    { name: 'General', sheets: ['make-safe'] },
    { name: 'Hydraulics', sheets: ['replace-ram-seal', 'check-hoses'] },
  ],
  sheets,
  machines: [
    {
      id: 'log-splitter',
      href: machine.href,
      name: machine.text,
      note: 'Upright splitter, 22 t, petrol or diesel engine.',
      pictures: [{ title: 'ram', svgHtml: ramPicture, note: undefined }],
      legendHtml: '',
      groups: [
        {
          kind: 'fasteners',
          heading: 'Fasteners',
          entries: [
            entry(
              'gland-bolt',
              'Gland bolt',
              [
                ['Count', '8', []],
                ['Thread', 'M12, class 8.8', []],
                ['Holds', '', [item('ram', 'ram')]],
              ],
              [{ ...replaceSeal, verbs: ['remove', 'install', 'torque'] }],
            ),
            entry(
              'drain-plug',
              'Drain plug',
              [['Thread', 'M18 × 1.5', []]],
              [{ ...replaceSeal, verbs: ['remove', 'install', 'torque'] }],
            ),
            entry('guard-bolt', 'Guard bolt', [['Count', '4', []]], []),
          ],
        },
        {
          kind: 'parts',
          heading: 'Parts',
          entries: [
            entry(
              'ram',
              'Ram',
              [
                ['Mass', '34 kg (75 lb)', []],
                ['Held by', '', [item('gland-bolt', 'gland bolt')]],
              ],
              [{ ...replaceSeal, verbs: ['remove', 'install'] }],
            ),
            entry(
              'gland-seal',
              'Gland seal',
              [['Single use', 'yes', []]],
              [{ ...replaceSeal, verbs: ['replace'] }],
              'LS-3308',
            ),
            entry('drain-washer', 'Drain plug washer', [], []),
            entry('wedge', 'Wedge', [], [{ ...makeSafe, verbs: ['set'] }]),
          ],
        },
        {
          kind: 'circuits',
          heading: 'Circuits',
          entries: [
            entry(
              'hydraulic-oil',
              'Hydraulic oil',
              [
                ['Capacity', '38 L (10.0 US gal)', []],
                ['Drained at', '', [item('drain-plug', 'drain plug')]],
              ],
              [{ ...replaceSeal, verbs: ['drain', 'fill', 'bleed'] }],
            ),
            entry('coolant', 'Engine coolant', [['Capacity', '6.2 L (1.6 US gal)', []]], []),
          ],
        },
        {
          kind: 'energy',
          heading: 'Energy to isolate',
          entries: [entry('key-switch', 'Key switch', [], [{ ...makeSafe, verbs: ['isolate'] }])],
        },
        {
          kind: 'tools',
          heading: 'Tools',
          entries: ['drip-tray', 'socket-18', 'sling', 'torque-wrench', 'cloth'].map((id) =>
            entry(id, id.replaceAll('-', ' '), [], []),
          ),
        },
      ],
    },
  ],
  torques,
  fluids,
  hazards,
  stock,
  rules: [
    { id: 'left-out', family: 'balance', level: 'error' },
    { id: 'unused-entry', family: 'links', level: 'warning' },
  ],
  report: {
    tool: { name: 'tallybolt', version: '0.1.0' },
    manual: { title: 'Log splitter LS-22 workshop manual', procedures: 3, steps: 56, actions: 61 },
    findings: [],
    waivers: [],
    summary: { error: 0, warning: 0, note: 0, waived: 0 },
  },
};

/** The same manual with two findings, printed as a draft. */
export const draftBook: Book = {
  ...fixtureBook,
  draft: true,
  report: {
    ...fixtureBook.report,
    waivers: [
      {
        rule: 'left-out',
        item: 'wedge',
        until: '2033-01-31',
        reason: 'The wedge goes to the grinder & comes back <sharp>.',
        file: 'procedures/general/make-safe.md',
        start: { line: 9, column: 1, offset: 180 },
        end: { line: 9, column: 36, offset: 215 },
        procedure: 'make-safe',
        waived: [
          {
            rule: 'left-out',
            level: 'error',
            message: 'The wedge is still out at the end',
            file: 'procedures/general/make-safe.md',
            start: { line: 14, column: 4, offset: 310 },
            end: { line: 14, column: 30, offset: 336 },
            data: {},
            related: [],
          },
        ],
      },
    ],
    summary: { error: 1, warning: 1, note: 0, waived: 1 },
    findings: [
      {
        rule: 'left-out',
        level: 'error',
        message: '4 of 8 gland bolts are still out at the end',
        file: 'procedures/hydraulics/replace-ram-seal.md',
        start: { line: 41, column: 4, offset: 1380 },
        end: { line: 41, column: 30, offset: 1406 },
        procedure: 'replace-ram-seal',
        item: 'gland-bolt',
        when: 'start = electric',
        data: { out: 4, count: 8 },
        related: [
          {
            file: 'procedures/hydraulics/replace-ram-seal.md',
            start: { line: 66, column: 4, offset: 2210 },
            end: { line: 66, column: 38, offset: 2244 },
            label: 'only 4 go back here',
          },
        ],
        help: 'Put the other 4 back with :install[…]{item=gland-bolt qty=4}.',
      },
      {
        rule: 'unused-entry',
        level: 'warning',
        message: 'No procedure uses “guard bolt” & its <washer>',
        file: 'machines/log-splitter.yaml',
        start: { line: 12, column: 3, offset: 240 },
        end: { line: 12, column: 13, offset: 250 },
        data: {},
        related: [],
      },
    ],
  },
};

function entry(
  id: string,
  name: string,
  facts: Book['machines'][number]['groups'][number]['entries'][number]['facts'],
  usedIn: Book['machines'][number]['groups'][number]['entries'][number]['usedIn'],
  partNumber?: string,
) {
  return { id, name, partNumber, picture: undefined, note: undefined, facts, usedIn };
}
