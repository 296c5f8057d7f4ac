import type { Book, MachineEntry, MachinePage, Sheet } from './book.ts';
import type { SearchDocument } from './search-options.ts';

type Found = Omit<SearchDocument, 'id'>;

/** The sheets, then the entries of the machines, then the charts and lists. */
export function searchDocuments(
  book: Pick<Book, 'sheets' | 'machines'>,
): readonly SearchDocument[] {
  const entries = book.machines.flatMap((machine) =>
    machine.groups.flatMap(({ heading, entries }) =>
      entries.map((entry) => entryFound(entry, heading, machine)),
    ),
  );
  return [
    ...book.sheets.map(sheetFound),
    ...book.machines.map(machineFound),
    ...entries,
    ...lists,
  ].map((found, id) => ({ id, ...found }));
}

function sheetFound(sheet: Sheet): Found {
  const { href, title, documentNumber, variants } = sheet;
  const pulled = [...sheet.tools, ...sheet.parts, ...sheet.consumables, ...sheet.fluidPulls];
  return {
    href,
    title,
    kind: 'Sheet',
    detail: [documentNumber, variants && `only for ${variants}`].filter(Boolean).join(', '),
    names: sheet.summary ?? '',
    numbers: documentNumber,
    text: [
      sheet.system,
      sheet.interval ?? '',
      wordsOf(sheet.bodyHtml),
      ...sheet.hazards.flatMap(({ signal, hazard, harm }) => [signal, hazard, harm]),
      ...pulled.flatMap(({ item, detail }) => [item.text, detail ?? '']),
    ].join(' '),
  };
}

function machineFound({ href, name, note }: MachinePage): Found {
  return {
    href,
    title: name,
    kind: 'Machine',
    detail: '',
    names: '',
    numbers: '',
    text: note ?? '',
  };
}

function entryFound(entry: MachineEntry, heading: string, machine: MachinePage): Found {
  const fact = (wanted: string): string =>
    entry.facts.find(([label]) => label === wanted)?.[1] ?? '';
  const { partNumber } = entry;
  const only = fact('Only for');
  return {
    href: `${machine.href}#${entry.id}`,
    title: entry.name,
    kind: heading,
    detail: [partNumber, machine.name, only && `only for ${only}`].filter(Boolean).join(', '),
    names: fact('Also called'),
    numbers: partNumber ?? '',
    text: [
      entry.note ?? '',
      ...entry.facts.flatMap(([, value, links]) => [value, ...links.map(({ text }) => text)]),
    ].join(' '),
  };
}

/** The words of safe HTML: no tags, no attributes, no entities. */
function wordsOf(html: string): string {
  return html.replace(/<(?:"[^"]*"|'[^']*'|[^>"'])*>/g, ' ').replace(/&#?\w+;/g, ' ');
}

const list = (href: string, title: string, names: string): Found => ({
  href,
  title,
  kind: 'List',
  detail: '',
  names,
  numbers: '',
  text: '',
});

const lists: readonly Found[] = [
  list('torque-chart/index.html', 'Torque chart', 'torques tightening'),
  list('fluids/index.html', 'Fluids and capacities', 'oil coolant fuel volumes mix'),
  list('tools/index.html', 'Tools', 'aids'),
  list('parts/index.html', 'Parts and consumables', 'part numbers spares'),
  list('pull-lists/index.html', 'Pull lists', ''),
  list('hazards/index.html', 'Hazards', 'danger warning caution notice'),
  list('signal-words/index.html', 'Signal words', 'danger warning caution notice meaning'),
  list('findings/index.html', 'Findings', 'errors warnings waivers'),
];
