import { resolveCondition, type VariantSet } from '../../applicability/index.ts';
import type { Fastener, Item, Part } from '../../catalogue/index.ts';
import type { LinkedProcedure } from '../../link/index.ts';
import type { Action } from '../../syntax/index.ts';
import type { Examined } from '../rule.ts';
import { type Done, isWholeJob, type WorkDone, workDone } from './work-done.ts';

/** Something comes in new without what the catalogue renews with it. */
export interface HalfRenewed {
  readonly procedure: LinkedProcedure;
  readonly done: Done;
  readonly item: Fastener | Part;
  readonly partner: Item;
}

/** Told in the procedure whose text brings the new one, each pair once. */
export function* halfRenewed({ expanded }: Examined): Generator<HalfRenewed> {
  const work = workDone(expanded);
  const all = [...expanded.procedures.values()];
  for (const procedure of all) {
    const told = new Set<Item>();
    for (const done of work.first(procedure)) {
      const { action, item, owner } = done;
      if (owner !== procedure || !isRenewing(action)) continue;
      if (item.kind !== 'fastener' && item.kind !== 'part') continue;
      for (const id of item['renew-with']) {
        const partner = owner.item(id);
        if (partner === undefined || told.has(partner)) continue;
        const jobs = isWholeJob(procedure)
          ? [procedure]
          : all.filter((one) => has(work, one, done));
        if (jobs.some((one) => renews(work, one, partner))) continue;
        if (!canMeet(item, partner, expanded.manual.space)) continue;
        told.add(partner);
        yield { procedure, done, item, partner };
      }
    }
  }
}

const isRenewing = ({ verb, isNew }: Action): boolean =>
  verb === 'replace' || (verb === 'install' && isNew);

const has = (work: WorkDone, one: LinkedProcedure, { action }: Done): boolean =>
  work.first(one).some((done) => done.action === action);

const renews = (work: WorkDone, one: LinkedProcedure, partner: Item): boolean =>
  work.first(one).some(({ action, item }) => item === partner && isRenewing(action));

/** False where no machine has both. */
function canMeet(a: Item, b: Item, space: Examined['linked']['manual']['space']): boolean {
  const presence = ({ when }: Item): VariantSet =>
    when === undefined ? space.all : resolveCondition(space, when).value;
  return space.and(presence(a), presence(b)) !== space.none;
}
