import type { Place } from '../../schemas/finding.ts';
import { comparePlaces, locator, type TextFile } from '../source/index.ts';
import { readFront } from './front.ts';
import { beyondLimits } from './limits.ts';
import { parseMarkdown } from './markdown.ts';
import type { Procedure, When } from './model.ts';
import { Reading, type ReadingFact } from './reading.ts';
import { readSections } from './sections.ts';
import { tooDeepTree } from './tree-depth.ts';
import { readWhen } from './when.ts';

/**
 * Reads a procedure from Markdown. Facts are in order of place. The value is undefined where the front
 * matter does not say which procedure it is, or the text is beyond what a procedure may measure.
 */
export function parseProcedure(file: TextFile): {
  value: Procedure | undefined;
  facts: readonly ReadingFact[];
} {
  const source = locator(file.path, file.text);
  const beyond = beyondLimits(source);
  if (beyond !== undefined) return { value: undefined, facts: [beyond] };
  const root = parseMarkdown(file.text);
  const deep = tooDeepTree(source, root);
  if (deep !== undefined) return { value: undefined, facts: [deep] };

  const reading = new Reading(source, root);
  const front = readFront(source, root);
  if (front === undefined) {
    const [line = ''] = file.text.split(/[\r\n]/, 1);
    reading.facts.push({ kind: 'front-matter-missing', place: source.place(0, line.length) });
  }
  for (const fact of front?.facts ?? []) reading.facts.push(fact);
  const sections = readSections(reading, root.children);
  const { facts, links, waivers } = reading;
  const matter = front?.value;
  if (front === undefined || matter === undefined)
    return { value: undefined, facts: inOrder(facts) };

  const { placeOf } = front;
  const when =
    matter.when === undefined ? undefined : readFrontWhen(reading, matter.when, placeOf('when'));
  const value: Procedure = {
    id: matter.procedure,
    file: file.path,
    text: file.text,
    front: matter,
    yaml: front,
    placeOf,
    when,
    sections,
    links,
    waivers,
    place: source.place(0, file.text.length),
  };
  return { value, facts: inOrder(facts) };
}

/** The condition without the quotation marks around it. */
function readFrontWhen(reading: Reading, written: string, { start, end }: Place): When | undefined {
  const whole = { start: start.offset, end: end.offset };
  const inside = reading.source(whole).indexOf(written);
  if (inside < 0) return readWhen(reading, written, whole);
  const from = whole.start + inside;
  return readWhen(reading, written, { start: from, end: from + written.length });
}

function inOrder(facts: readonly ReadingFact[]): ReadingFact[] {
  return facts.toSorted((a, b) => comparePlaces(a.place, b.place));
}
