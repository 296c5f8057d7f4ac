import { nearest } from '../../source/index.ts';
import type { Draft, Rule } from '../rule.ts';
import { ledgerDraft } from '../telling/ledger-draft.ts';
import { pickFrom, unknownReferences } from '../telling/unknown-reference.ts';
import { choices, code } from '../wording/lists.ts';
import { the, thingOf } from '../wording/thing.ts';

export const rule: Rule = {
  id: 'unknown-state',
  family: 'links',
  level: 'error',
  *check(examined): Generator<Draft> {
    yield* unknownReferences(
      examined,
      ['state', 'position', 'instance', 'limit'],
      ({ what, id, owner }) => `${code(owner)} has no ${what} ${code(id)}`,
      ({ known, owner, what }) => pickFrom(known, none(what, owner)),
    );
    for (const fact of examined.facts('contract-unfit')) {
      const thing = thingOf(examined, fact.procedure, fact.item);
      if (thing.item === undefined) continue;
      const name = the(thing);
      const near = nearest(fact.written, fact.known);
      yield ledgerDraft(examined, fact, {
        message:
          fact.known.length === 0
            ? `${name} has no state that ${code(fact.member)} could name`
            : `${name} cannot be ${code(fact.written)}, as ${code(fact.member)} says`,
        help:
          fact.known.length === 0
            ? `Take it out of ${code(fact.member)}.`
            : near !== undefined
              ? `Perhaps ${code(near)} is meant.`
              : `Write ${choices(fact.known)}, or a count for each state that adds up to all pieces.`,
      });
    }
    for (const { place, home, positions } of examined.facts('control-home-unknown')) {
      yield {
        place,
        message: `${code(home)} is not one of the positions of this control`,
        data: { home, positions: [...positions] },
        help: `Write ${choices(positions)}.`,
      };
    }
  },
};

function none(what: string, owner: string): string {
  if (what === 'instance') return `${code(owner)} has no ${code('each')}; take it out.`;
  if (what === 'limit') return `Give ${code(owner)} ${code('limits')} by name, or take it out.`;
  return 'Take it out.';
}
