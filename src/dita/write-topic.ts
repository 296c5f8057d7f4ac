import { type XmlElement, xmlDocument } from '../render/index.ts';

/** Elements with nothing but elements in them, or with blocks alone: white space between those means nothing. */
const spaced: ReadonlySet<string> = new Set(
  [
    'map topichead topicref topicmeta task reference prolog metadata taskbody refbody prereq context',
    'result postreq steps stepsection step substeps substep choices choice info hazardstatement',
    'messagepanel section ul ol sl dl dlentry div lq fig table tgroup thead tbody row',
  ].flatMap((names) => names.split(' ')),
);

const shells = {
  map: '<!DOCTYPE map PUBLIC "-//OASIS//DTD DITA 1.3 Map//EN" "map.dtd">',
  task: '<!DOCTYPE task PUBLIC "-//OASIS//DTD DITA 1.3 Task//EN" "task.dtd">',
  reference: '<!DOCTYPE reference PUBLIC "-//OASIS//DTD DITA 1.3 Reference//EN" "reference.dtd">',
} as const;

/** A topic or map as a document of DITA 1.3, in the document types that OASIS ships. */
export function written(root: XmlElement, shell: keyof typeof shells): string {
  return xmlDocument(root, { doctype: shells[shell], isSpaced: (name) => spaced.has(name) });
}
