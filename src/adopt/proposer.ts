import type { Verb } from '../../schemas/directives.ts';
import type { Edit } from '../../schemas/finding.ts';
import type { Proposal } from '../../schemas/untracked.ts';
import type { Item } from '../catalogue/index.ts';
import { verbsFor } from '../ledger/index.ts';
import { allActions, type LinkedManual, type LinkedProcedure } from '../link/index.ts';
import { attributesFor, isNew } from './attributes.ts';
import type { Lacking } from './lacking-entries.ts';
import type { Sighting } from './sighting.ts';
import { type Standing, standingAtFirst } from './standing.ts';
import { verbFor } from './verb-for.ts';

/** Makes the directives of sightings, in order of place: what was set aside is put back, not installed. */
export class Proposer {
  readonly #manual: LinkedManual;
  readonly #textOf: (file: string) => string;
  readonly #standing = new Map<LinkedProcedure, Standing>();

  constructor(manual: LinkedManual, textOf: (file: string) => string) {
    this.#manual = manual;
    this.#textOf = textOf;
  }

  /** `entry` is the one that the catalogue lacks; it can be named where it is written. */
  propose(
    sighting: Sighting,
    entry: Lacking | undefined,
    isWritten: (entry: Lacking) => boolean,
  ): Proposal {
    const { work, place, one, candidates, phrase } = sighting;
    const [item, ...others] = candidates.fits;
    const words = sighting.words.replaceAll(/\s+/g, ' ').trim();
    const verb = item === undefined ? undefined : this.#verb(sighting, item);
    const common = { ...place, procedure: one.procedure.id, words };
    const named = candidates.near === undefined ? candidates.fits : [candidates.near];
    const told = (why: Why, says: Verb, rest = ''): Proposal => ({
      ...common,
      verb: says,
      directive: `:${says}[${words}]{item=…${rest}}`,
      candidates: named.map(candidate),
      why,
    });
    const first = verb ?? work.found.said.verbs[0] ?? work.found.verb;
    if (item === undefined && phrase === undefined) return told('pronoun', first);
    if (item === undefined) {
      if (candidates.near !== undefined) return told('spelled-alike', first);
      return this.#withEntry(sighting, entry, isWritten) ?? told('none-fits', first);
    }
    if (others.length > 0) return told('several-fit', first);
    if (verb === undefined) return told('none-fits', first);
    const standing = this.#standingIn(one);
    const isStillIn = comesBack.has(verb) && standing.isKnown && !standing.away.has(item.id);
    if (verb === 'set-aside') standing.aside.add(item.id);
    standing.away.add(item.id);
    const attributes = attributesFor(sighting, verb, item);
    const directive = (label: string) =>
      `:${verb}[${label}]{item=${item.id}${attributes ?? ' to=…'}}`;
    const proposal = {
      ...common,
      verb,
      directive: directive(words),
      candidates: [candidate(item)],
    };
    if (work.isAside) return { ...proposal, why: 'beside-the-work' };
    if (attributes === undefined) return { ...proposal, why: 'position' };
    if (isStillIn) return { ...proposal, why: 'still-in' };
    return this.#written(proposal, sighting, directive);
  }

  #withEntry(
    sighting: Sighting,
    entry: Lacking | undefined,
    isWritten: (entry: Lacking) => boolean,
  ): Proposal | undefined {
    if (entry === undefined) return undefined;
    const { said } = sighting.work.found;
    const verb = said.verbs.find((one) => verbsFor(entry.kind).includes(one));
    if (verb === undefined) return undefined;
    const extra = verb === 'install' && isNew(sighting) ? ' new' : '';
    const words = sighting.words.replaceAll(/\s+/g, ' ').trim();
    const directive = (label: string) => `:${verb}[${label}]{item=${entry.id}${extra}}`;
    const proposal = {
      ...sighting.place,
      procedure: sighting.one.procedure.id,
      words,
      verb,
      directive: directive(words),
      candidates: [],
    };
    return isWritten(entry)
      ? this.#written(proposal, sighting, directive)
      : { ...proposal, why: 'none-fits' };
  }

  /** With its edit, where the file has the words as they are read. */
  #written(
    proposal: Proposal,
    { place, words }: Sighting,
    directive: (label: string) => string,
  ): Proposal {
    const { file, start, end } = place;
    const text = this.#textOf(file);
    const slice = text.slice(start.offset, end.offset);
    const isSame = slice.replaceAll(/\s+/g, ' ') === words.replaceAll(/\s+/g, ' ');
    const before = text.slice(Math.max(0, start.offset - 1), start.offset);
    if (!isSame || /[[\]{}:\\]/.test(slice) || /[:\p{L}\p{N}]/u.test(before))
      return { ...proposal, why: 'signs' };
    const edit: Edit = { file, start: start.offset, end: end.offset, text: directive(slice) };
    return { ...proposal, edit };
  }

  #verb(sighting: Sighting, item: Item): Verb | undefined {
    return verbFor(sighting, item, ({ id }) => this.#standingIn(sighting.one).aside.has(id));
  }

  #standingIn(one: LinkedProcedure): Standing {
    let standing = this.#standing.get(one);
    if (standing === undefined) {
      standing = standingAtFirst(one, this.#manual);
      for (const { verb, item } of allActions(one.procedure)) {
        if (verb === 'set-aside') standing.aside.add(item.id);
        standing.away.add(item.id);
      }
      this.#standing.set(one, standing);
    }
    return standing;
  }
}

/** Verbs that bring home what must have been taken away before. */
const comesBack: ReadonlySet<Verb> = new Set([
  'install',
  'return',
  'connect',
  'restore',
  'withdraw',
  'uncap',
]);

type Why = NonNullable<Proposal['why']>;

const candidate = (item: Item) => ({
  id: item.id,
  name: item.kind === 'hazard' ? item.hazard : item.name,
});
