import type { Fastener } from '../../catalogue/index.ts';
import { allActions, type LinkedProcedure } from '../../link/index.ts';
import { entryKey } from '../reading/entry-key.ts';
import type { Draft, Rule } from '../rule.ts';
import { code } from '../wording/lists.ts';
import { the, thing } from '../wording/thing.ts';

export const rule: Rule = {
  id: 'never-rechecked',
  family: 'values',
  level: 'warning',
  *check({ subjects }): Generator<Draft> {
    for (const item of new Set(subjects.flatMap(({ expanded }) => [...useIn(expanded).torqued]))) {
      const when = item['check-again'];
      if (when === undefined) continue;
      yield {
        place: item.placeOf('check-again'),
        item: item.id,
        message: `The torque of ${the(thing(item.id, item))} is to be checked again (${when}), and no procedure checks it`,
        data: { 'check-again': when },
        help: `Write a procedure with ${code(`:check{item=${item.id}}`)}, and name it under ${code('follow-on')} of the job that torques ${item.count === 1 ? 'it' : 'them'}.`,
        unless: [entryKey(item)],
      };
    }
  },
  *settles({ subjects }): Generator<string> {
    for (const { expanded } of subjects)
      for (const item of useIn(expanded).checked) yield entryKey(item);
  },
};

/** Fasteners that a procedure tightens, and those that it checks without having tightened them before. */
function useIn(one: LinkedProcedure) {
  const torqued = new Set<Fastener>();
  const checked = new Set<Fastener>();
  for (const { verb, item: ref } of allActions(one.procedure)) {
    const item = one.item(ref);
    if (item?.kind !== 'fastener' || item['check-again'] === undefined) continue;
    if (verb === 'torque' || verb === 'tighten' || verb === 'install') torqued.add(item);
    else if ((verb === 'check' || verb === 'measure') && !torqued.has(item)) checked.add(item);
  }
  return { torqued, checked };
}
