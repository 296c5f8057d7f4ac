import type { Book, HazardRow, PageLink, StockRow } from '../../src/render/book.ts';

const item = (id: string, text: string): PageLink => ({
  href: `machines/log-splitter/index.html#${id}`,
  text,
});
const replaceSeal = {
  href: 'procedures/replace-ram-seal/index.html',
  text: 'Replace the ram seal',
};

function row(id: string, text: string, more: Partial<StockRow> = {}): StockRow {
  return {
    anchor: `log-splitter-${id}`,
    item: item(id, text),
    count: 1,
    partNumber: undefined,
    details: [],
    when: undefined,
    owner: undefined,
    usedIn: [replaceSeal],
    ...more,
  };
}

export const stock: Book['stock'] = {
  tools: [
    row('torque-wrench', 'torque wrench', { details: ['20 to 100 N·m'] }),
    row('sling', 'lifting sling', { when: 'engine = diesel', usedIn: [] }),
  ],
  aids: [row('drip-tray', 'drip trays', { count: 2, details: ['45 L'] })],
  parts: [
    row('gland-seal', 'gland seal', { partNumber: 'LS-3308', details: ['once only'] }),
    row('drain-washer', 'drain plug washer', { details: ['once only'] }),
  ],
  consumables: [row('cloth', 'lint-free cloth')],
  partNumbers: [{ number: 'LS-3308', items: [item('gland-seal', 'gland seal')] }],
};

export const hazards: readonly HazardRow[] = [
  {
    anchor: 'log-splitter-wedge-moves',
    signal: 'danger',
    hazard: 'The wedge can move under stored pressure',
    harm: 'Crushing or amputation of hands',
    avoid: 'Work the lever with the engine off.',
    when: undefined,
    raisedBy: [
      { words: 'any work on', item: item('wedge', 'wedge') },
      { words: 'remove', item: item('ram', 'ram') },
      { words: 'remove', item: { href: '', text: 'old cover' } },
    ],
    first: [{ words: 'check', item: item('key-switch', 'key switch') }],
    usedIn: [replaceSeal],
  },
  {
    anchor: 'log-splitter-hot-oil',
    signal: 'warning',
    hazard: 'Hot hydraulic oil',
    harm: 'Burns to skin and eyes',
    avoid: 'Let it cool.',
    when: 'engine = diesel',
    raisedBy: [],
    first: [],
    usedIn: [],
  },
];

export const ramPicture =
  '<svg viewBox="0 0 240 28" width="240" height="28" class="ties" role="group" aria-label="2 items around the ram and what ties them together"><path class="tie holds" d="M92 14L130 14"></path><path class="tips" d="M130 10.5L138 14L130 17.5Z"></path><a href="#gland-bolt"><rect x="2" y="2" width="90" height="24" rx="12"></rect><text x="47" y="18.5">gland bolt</text></a><a href="#ram"><rect x="138" y="2" width="90" height="24"></rect><text x="183" y="18.5">ram</text></a></svg>';
