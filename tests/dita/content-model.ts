import { XmlElement, XmlText } from '@rgrove/parse-xml';

/**
 * The content models of DITA 1.3 for the elements that the export writes, from the grammar that OASIS ships
 * with the standard: task.mod, reference.mod, map.mod, topic.mod, commonElements.mod, tblDecl.mod, metaDecl.mod,
 * hazardstatementDomain.mod, and the strict task body constraint that task.dtd brings in. Models are those of
 * the grammar, less the elements that are never written here; mapGroup.mod (topichead) and the highlight and
 * programming domains (b, i, line-through, sub, sup, codeph) are from memory.
 */
type Model = { readonly mixed: string } | { readonly sequence: string };

/** Domain elements stand where the element that they specialize may. */
const ph = 'ph b i line-through sub sup codeph';
const basicPh = `${ph} xref`;
const blocks = 'dl div fig image lq note hazardstatement ol p pre simpletable sl table ul';
const without = (...names: readonly string[]): string =>
  blocks
    .split(' ')
    .filter((name) => !names.includes(name))
    .join(' ');
const flow = `${blocks} ${basicPh} data`;
const words = `${ph} data`;
const title = `${ph} data image`;
const cell = `${without('simpletable', 'table')} ${basicPh} data`;

const models: Readonly<Record<string, Model>> = {
  map: { sequence: 'title? topicmeta? (topicref|topichead)*' },
  topichead: { sequence: 'topicmeta? (topicref|topichead)*' },
  topicref: { sequence: 'topicmeta? topicref*' },
  topicmeta: { sequence: 'navtitle? publisher? metadata* othermeta* data*' },
  navtitle: { mixed: words },
  publisher: { mixed: 'data' },
  task: { sequence: 'title shortdesc? prolog? taskbody?' },
  reference: { sequence: 'title shortdesc? prolog? refbody?' },
  title: { mixed: title },
  shortdesc: { mixed: `${title} xref` },
  prolog: { sequence: 'publisher? metadata* data*' },
  metadata: { sequence: 'othermeta* data*' },
  othermeta: { sequence: '' },
  data: { mixed: `${basicPh} data image title` },
  taskbody: { sequence: 'prereq? context? (steps|steps-unordered)? result? example? postreq?' },
  prereq: { mixed: flow },
  context: { mixed: flow },
  result: { mixed: flow },
  postreq: { mixed: flow },
  steps: { sequence: 'data* (stepsection? step)+' },
  stepsection: { mixed: flow },
  step: { sequence: '(note|hazardstatement)* cmd (choices|info|substeps)*' },
  substeps: { sequence: 'data* substep+' },
  substep: { sequence: '(note|hazardstatement)* cmd info*' },
  cmd: { mixed: `${basicPh} data image` },
  info: { mixed: flow },
  choices: { sequence: 'data* choice+' },
  choice: { mixed: flow },
  refbody: { mixed: '' },
  section: { mixed: `${flow} title` },
  hazardstatement: { sequence: 'messagepanel+' },
  messagepanel: { sequence: 'data* typeofhazard consequence* howtoavoid+' },
  typeofhazard: { mixed: words },
  consequence: { mixed: words },
  howtoavoid: { mixed: `${basicPh} sl simpletable` },
  p: { mixed: `${without('p')} ${basicPh} data` },
  note: { mixed: `${without('note', 'hazardstatement')} ${basicPh} data` },
  lq: { mixed: `${without('lq')} ${basicPh} data` },
  div: { mixed: flow },
  pre: { mixed: `${basicPh} data` },
  ul: { sequence: 'data* li+' },
  ol: { sequence: 'data* li+' },
  li: { mixed: flow },
  sl: { sequence: 'data* sli+' },
  sli: { mixed: `${basicPh} data image` },
  dl: { sequence: 'data* dlentry+' },
  dlentry: { sequence: 'dt+ dd+' },
  dt: { mixed: `${basicPh} data image` },
  dd: { mixed: flow },
  fig: { sequence: 'title? desc? (dl|div|image|lq|note|ol|p|pre|sl|ul|simpletable|xref|data)*' },
  image: { sequence: 'alt?' },
  alt: { mixed: words },
  table: { sequence: 'title? desc? tgroup+' },
  tgroup: { sequence: 'colspec* thead? tbody' },
  colspec: { sequence: '' },
  thead: { sequence: 'row+' },
  tbody: { sequence: 'row+' },
  row: { sequence: 'entry+' },
  entry: { mixed: cell },
  xref: { mixed: title },
  ph: { mixed: `${basicPh} data image` },
  b: { mixed: `${basicPh} data` },
  i: { mixed: `${basicPh} data` },
  'line-through': { mixed: `${basicPh} data` },
  sub: { mixed: `${basicPh} data` },
  sup: { mixed: `${basicPh} data` },
  codeph: { mixed: words },
};

/** reference.mod: sections and tables, and no text of its own. */
const refbody: Model = { sequence: '(section|table|simpletable|data)*' };

const select = 'id product outputclass xml:lang';
const attributes: Readonly<Record<string, string>> = {
  topicref: 'href type',
  othermeta: 'name content',
  data: 'name value',
  hazardstatement: 'type',
  note: 'type',
  image: 'href placement',
  xref: 'href scope format',
  pre: 'xml:space',
  tgroup: 'cols',
  colspec: 'colname',
};

/** Values that an attribute may have, where the grammar lists them. */
const values: Readonly<Record<string, readonly string[]>> = {
  'hazardstatement type': ['danger', 'warning', 'caution', 'notice'],
  'note type': ['important'],
  'image placement': ['break', 'inline'],
  'xref scope': ['local', 'external', 'peer'],
  'pre xml:space': ['preserve'],
};

/** Elements whose entry in the grammar has no attributes for conditions: these would not be valid there. */
const unconditional = new Set(['title', 'taskbody', 'refbody', 'entry', 'colspec']);

/** What is wrong with an element and all that is in it; its own names and those of its parts are in the words. */
export function faultsOf(element: XmlElement): string[] {
  const { name } = element;
  const model = name === 'refbody' ? refbody : models[name];
  if (model === undefined) return [`${name} is no element of DITA that is known here`];
  const children = element.children.filter((child) => child instanceof XmlElement);
  const hasText = element.children.some(
    (child) => child instanceof XmlText && child.text.trim() !== '',
  );
  const inside = children.map((child) => child.name);
  const own =
    'mixed' in model
      ? inside
          .filter((child) => !model.mixed.split(' ').includes(child))
          .map((child) => `${name} may not hold ${child}`)
      : [
          ...(hasText ? [`${name} may not hold text`] : []),
          ...(matches(model.sequence, inside)
            ? []
            : [`${name} may not hold ${inside.join(' ') || 'nothing'}`]),
        ];
  return [...own, ...attributeFaults(element), ...children.flatMap(faultsOf)];
}

function matches(sequence: string, names: readonly string[]): boolean {
  const pattern = sequence.replace(/[\w-]+/g, (name) => `(?:${name} )`).replace(/ (?!\))/g, '');
  return new RegExp(`^${pattern}$`).test(names.map((name) => `${name} `).join(''));
}

function attributeFaults({ name, attributes: own }: XmlElement): string[] {
  const allowed = [...(attributes[name] ?? '').split(' '), ...select.split(' ')];
  return Object.entries(own).flatMap(([key, value]) => {
    const listed = values[`${name} ${key}`];
    if (!allowed.includes(key)) return [`${name} has no attribute ${key}`];
    if (key === 'product' && unconditional.has(name)) return [`${name} may have no condition`];
    return listed === undefined || listed.includes(value) ? [] : [`${name} ${key}=${value}`];
  });
}
