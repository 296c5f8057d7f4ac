import type { Place } from '../../schemas/finding.ts';
import { isSingleUse } from '../catalogue/index.ts';
import type { LinkedManual, LinkedProcedure } from '../link/index.ts';
import { type UntrackedWork, untrackedWork } from '../rules/index.ts';
import { type Candidates, meantBy } from './item-candidates.ts';
import { namedAnywhere } from './named-anywhere.ts';
import type { NounPhrase } from './noun-phrase.ts';
import { workReader } from './work-reader.ts';

/** Words that act without a directive, and what they may mean. */
export interface Sighting {
  readonly one: LinkedProcedure;
  readonly work: UntrackedWork;
  /** What goes into the brackets, as it is read. */
  readonly words: string;
  readonly place: Place;
  /** What follows the verb, to the end of the clause; the noun phrase counts in it. */
  readonly object: string;
  /** Undefined where the thing is only "it", or named elsewhere in the sentence. */
  readonly phrase: NounPhrase | undefined;
  readonly candidates: Candidates;
}

/** All words of a procedure that act without a directive, in order of place. */
export function sightingsIn(one: LinkedProcedure, manual: LinkedManual): readonly Sighting[] {
  return untrackedWork(one, manual, workReader(one.catalogue))
    .map((work) => sightingOf(one, work))
    .filter(isAboutWork)
    .sort((a, b) => a.place.start.offset - b.place.start.offset);
}

/** To check or measure what is in no catalogue, or what the words leave open, is counted nowhere. */
function isAboutWork({ work, candidates }: Sighting): boolean {
  const [item, ...others] = candidates.fits;
  const isSole = item !== undefined && others.length === 0;
  if (work.found.said.anywhere) return isSole;
  // What is made to be used once is gone when it is taken out.
  const isGone = isSole && isSingleUse(item) && work.found.said.verbs[0] === 'discard';
  return !(isGone && work.actions.some((action) => action.item.id === item.id));
}

function sightingOf(one: LinkedProcedure, work: UntrackedWork): Sighting {
  const { text, found } = work;
  const { object, said, isOnIt } = found;
  const from = text.text.indexOf(object, found.start + 1);
  const meant = isOnIt || from < 0 ? undefined : meantBy(object, one.catalogue, said.verbs);
  const clauseEnd =
    from +
    object.length +
    (/\bbetween\b/i.test(object)
      ? (between.exec(text.text.slice(from + object.length))?.[0].length ?? 0)
      : 0);
  const sole = meant?.candidates.fits.length === 1;
  const isByPart = meant?.candidates.matched === 0 || said.verbs.includes('apply');
  const named =
    isOnIt || (said.anywhere && (!sole || isByPart))
      ? namedAnywhere(work, one.catalogue, clauseEnd)
      : undefined;
  const nounEnd =
    named?.end ?? (meant === undefined || from < 0 ? found.end : from + meant.phrase.end);
  const rest = from < 0 ? '' : text.text.slice(nounEnd, from + object.length);
  const end = nounEnd + (particle.exec(rest)?.[0].length ?? 0);
  return {
    one,
    work,
    words: text.text.slice(found.start, end),
    place: text.placeOf(found.start, end),
    object,
    phrase: named === undefined ? meant?.phrase : undefined,
    candidates: withinStep(
      named?.candidates ?? meant?.candidates ?? { fits: [], matched: 0, near: undefined },
      work,
    ),
  };
}

/** Of several entries the one that an action of the same step names: "the bolts" are those just taken out. */
function withinStep(candidates: Candidates, { actions }: UntrackedWork): Candidates {
  if (candidates.fits.length < 2) return candidates;
  const acted = candidates.fits.filter(({ id }) => actions.some(({ item }) => item.id === id));
  return acted.length === 1 ? { ...candidates, fits: acted } : candidates;
}

/** "the gap between the blade" goes on. */
const between = /^\s+and\s[^.,;:!?()]*/i;

/** "off" of "take the cover off", but not "on" of "put the cover on the housing". */
const particle =
  /^\s+(?:straight\s+)?(?:back\s+)?(?:out|off|away|aside|in|on|home|open|shut|closed|up|down|apart|back|loose)(?![\p{L}\p{N}-])(?!\s+(?:the|an?|its|their|one|both|each|\d))/iu;
