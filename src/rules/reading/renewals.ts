import { resolveCondition, type VariantSet } from '../../applicability/index.ts';
import type { Fastener, Item, Part } from '../../catalogue/index.ts';
import type { LinkedManual, LinkedProcedure } from '../../link/index.ts';
import type { Action } from '../../syntax/index.ts';
import type { Examined } from '../rule.ts';
import { entryKey } from './entry-key.ts';
import { type Done, isWholeJob, type WorkDone, workDone } from './work-done.ts';

/** Something comes in new without what the catalogue renews with it. */
export interface HalfRenewed {
  readonly procedure: LinkedProcedure;
  readonly done: Done;
  readonly item: Fastener | Part;
  readonly partner: Item;
  /** What settles it: a job that does this work and renews the other as well. */
  readonly unless: string;
}

/** Told in the procedure whose text brings the new one, each pair once. */
export function* halfRenewed({ subjects, expanded }: Examined): Generator<HalfRenewed> {
  for (const { expanded: procedure } of subjects) yield* inText(procedure, expanded);
}

function* inText(procedure: LinkedProcedure, expanded: LinkedManual): Generator<HalfRenewed> {
  const work = workDone(expanded);
  const told = new Set<Item>();
  for (const done of work.first(procedure)) {
    const { action, item, owner } = done;
    if (owner !== procedure || !isRenewing(action)) continue;
    if (item.kind !== 'fastener' && item.kind !== 'part') continue;
    for (const id of item['renew-with']) {
      const partner = owner.item(id);
      if (partner === undefined || told.has(partner)) continue;
      if (renews(work, procedure, partner)) continue;
      if (!canMeet(item, partner, expanded.manual.space)) continue;
      told.add(partner);
      const unless = renewedWith(action, partner);
      yield { procedure, done, item, partner, unless };
    }
  }
}

/** What jobs do together with the new ones that procedures bring which they perform. */
export function* renewedTogether({ subjects, expanded }: Examined): Generator<string> {
  const work = workDone(expanded);
  for (const { expanded: job } of subjects) {
    for (const { action, item, owner } of work.first(job)) {
      if (owner === job || isWholeJob(owner) || !isRenewing(action)) continue;
      if (item.kind !== 'fastener' && item.kind !== 'part') continue;
      for (const id of item['renew-with']) {
        const partner = owner.item(id);
        if (partner !== undefined && renews(work, job, partner)) yield renewedWith(action, partner);
      }
    }
  }
}

const renewedWith = ({ place }: Action, partner: Item): string =>
  `${place.file}:${place.start.offset} with ${entryKey(partner)}`;

const isRenewing = ({ verb, isNew }: Action): boolean =>
  verb === 'replace' || (verb === 'install' && isNew);

const renews = (work: WorkDone, one: LinkedProcedure, partner: Item): boolean =>
  work.first(one).some(({ action, item }) => item === partner && isRenewing(action));

/** False where no machine has both. */
function canMeet(a: Item, b: Item, space: Examined['linked']['manual']['space']): boolean {
  const presence = ({ when }: Item): VariantSet =>
    when === undefined ? space.all : resolveCondition(space, when).value;
  return space.and(presence(a), presence(b)) !== space.none;
}
