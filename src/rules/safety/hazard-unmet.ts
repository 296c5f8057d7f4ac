import type { Hazard } from '../../catalogue/index.ts';
import type { LinkedProcedure } from '../../link/index.ts';
import { raisedBy } from '../reading/hazard-order.ts';
import { type Done, isWholeJob, workDone } from '../reading/work-done.ts';
import type { Draft, Examined, Rule } from '../rule.ts';
import { declared } from '../telling/trace.ts';
import { code } from '../wording/lists.ts';
import { the, thing } from '../wording/thing.ts';
import { verbWords } from '../wording/verbs.ts';

export const rule: Rule = {
  id: 'hazard-unmet',
  family: 'safety',
  level: 'warning',
  *check(examined): Generator<Draft> {
    for (const { procedure, done, hazard, verb, item } of unmet(examined)) {
      const named = the(thing(item, done.owner.item(item)));
      yield {
        place: done.place,
        procedure: procedure.procedure.id,
        item: done.item.id,
        message: `This raises the hazard “${hazard.hazard}”, and ${named} is not ${doneWord(verb)} before it`,
        data: { hazard: hazard.id, first: { verb, item } },
        related: [declared(hazard.placeOf('first'), 'what must come first')],
        help: `Add ${code(`:${verb}{item=${item}}`)} before this.`,
      };
    }
  },
};

interface Unmet {
  readonly procedure: LinkedProcedure;
  readonly done: Done;
  readonly hazard: Hazard;
  readonly verb: string;
  readonly item: string;
}

/** What a hazard asks for first and the job has not done by then, once for each hazard. */
function* unmet({ subjects, expanded }: Examined): Generator<Unmet> {
  const work = workDone(expanded);
  for (const { expanded: procedure } of subjects) {
    if (!isWholeJob(procedure)) continue;
    const told = new Set<string>();
    const before = new Map<string, Set<string>>();
    for (const done of work.first(procedure)) {
      const { action, owner } = done;
      for (const hazard of raisedBy(action, owner)) {
        if (told.has(hazard.id)) continue;
        const missing = hazard.first.find(({ verb, item }) => !isDone(before.get(item), verb));
        if (missing === undefined) continue;
        told.add(hazard.id);
        const isOwn = owner.procedure.id === procedure.procedure.id;
        if (isOwn || !isWholeJob(owner)) yield { procedure, done, hazard, ...missing };
      }
      before.set(action.item.id, (before.get(action.item.id) ?? new Set()).add(action.verb));
    }
  }
}

/** To measure a thing is to check it, too. */
const isDone = (verbs: ReadonlySet<string> | undefined, verb: string): boolean =>
  verbs !== undefined && (verbs.has(verb) || (verb === 'check' && verbs.has('measure')));

const doneWord = (verb: string): string => {
  const words = Object.entries(verbWords).find(([known]) => known === verb);
  return words === undefined ? verb : words[1].done;
};
