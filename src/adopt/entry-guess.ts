import type { Verb } from '../../schemas/directives.ts';
import type { ItemKind } from '../catalogue/index.ts';
import { verbsFor } from '../ledger/index.ts';
import type { Sighting } from './sighting.ts';

/** The entry that a catalogue lacks, as far as the words tell it. */
export interface Guess {
  readonly kind: ItemKind;
  readonly section: Section;
  readonly id: string;
  readonly name: string;
  /** Members beside name and count; … stands for what is not said. */
  readonly members: readonly string[];
  readonly isPlural: boolean;
  readonly count: number | undefined;
}

export type Section =
  | 'fasteners'
  | 'parts'
  | 'connections'
  | 'circuits'
  | 'energy'
  | 'controls'
  | 'aids';

/** Undefined where the words name no thing that an id can be made of. */
export function guessOf({ phrase, object, work }: Sighting): Guess | undefined {
  if (
    phrase === undefined ||
    work.isAside ||
    work.found.said.needs === 'item' ||
    work.found.said.anywhere ||
    phrase.stems.length > 4
  )
    return undefined;
  const id = phrase.stems.join('-').replaceAll(/['’/]/g, '');
  if (!/^[a-z][a-z0-9]*(-[a-z0-9]+)*$/.test(id)) return undefined;
  const words = object.slice(phrase.start, phrase.end).replaceAll(/\s+/g, ' ');
  const shape = shapeFor(work.found.said.verbs, phrase.stems.at(-1) ?? '', phrase.stems);
  if (!verbsFor(shape.kind).some((verb) => work.found.said.verbs.includes(verb))) return undefined;
  return {
    ...shape,
    id,
    name: phrase.isPlural ? singular(words, phrase.stems.at(-1) ?? '') : words,
    isPlural: phrase.isPlural,
    count: phrase.count,
  };
}

type Shape = Pick<Guess, 'kind' | 'section' | 'members'>;

const shape = (kind: ItemKind, section: Section, ...members: string[]): Shape => ({
  kind,
  section,
  members,
});

/** A thing of a kind that the verb can be done to; of several, the one that the noun says. */
function shapeFor(verbs: readonly Verb[], noun: string, stems: readonly string[]): Shape {
  const [first] = verbs;
  if (first === 'drain' || first === 'fill' || first === 'bleed' || first === 'relieve')
    return shape('circuit', 'circuits', 'fluid: …', 'capacity: …');
  if (first === 'isolate' || first === 'restore') return shape('energy', 'energy', 'type: …');
  if (first === 'set' && !verbs.includes('install') && !verbs.includes('remove'))
    return shape('control', 'controls', 'positions: …', 'home: …');
  const type =
    first === 'connect' || first === 'disconnect' || first === 'cap' || first === 'uncap'
      ? connectionType(noun)
      : undefined;
  if (type !== undefined) return shape('connection', 'connections', `type: ${type}`);
  if (fastener.test(noun) || (noun === 'plug' && stems.length > 1))
    return shape('fastener', 'fasteners');
  if (verbs.includes('fit') && aid.test(noun)) return shape('aid', 'aids');
  if (hose.test(noun) && verbs.includes('disconnect') && !verbs.includes('remove'))
    return shape('connection', 'connections', 'type: …');
  return shape('part', 'parts');
}

const fastener = /^(?:bolt|screw|nut|stud|setscrew|capscrew|locknut|circlip|rivet|clip|latch|cap)$/;
const aid = /^(?:chock|stand|jack|trestle|prop|pan|tray|sling|hoist|padlock|tag|sign)$/;
const hose = /^(?:hose|pipe|line|tube|cable|lead|wire|connector|plug|coupling|linkage|rod)$/;

function connectionType(noun: string): string {
  if (noun === 'hose') return 'hose';
  if (/^(?:pipe|line|tube)$/.test(noun)) return 'pipe';
  if (/^(?:cable|lead|wire)$/.test(noun)) return 'cable';
  if (/^(?:connector|plug|coupling|socket)$/.test(noun)) return 'connector';
  if (/^(?:linkage|rod|link)$/.test(noun)) return 'linkage';
  return noun === 'clip' ? 'clip' : '…';
}

/** "Cover Bolts" → "Cover Bolt": the letters of the writer, without the plural. */
function singular(words: string, stem: string): string {
  const last = words.slice(words.lastIndexOf(' ') + 1);
  const one = last.toLowerCase().startsWith(stem) ? last.slice(0, stem.length) : stem;
  return words.slice(0, words.length - last.length) + one;
}
