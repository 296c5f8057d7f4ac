import type { Draft, Examined, Rule } from '../rule.ts';
import { factsOf } from '../telling/json.ts';
import { ledgerDraft } from '../telling/ledger-draft.ts';
import { declared } from '../telling/trace.ts';
import { directive } from '../wording/directive.ts';
import { kindWord } from '../wording/kinds.ts';
import { choices, code, oneOf, sentence } from '../wording/lists.ts';
import { the, thingOf } from '../wording/thing.ts';

export const rule: Rule = {
  id: 'item-unfit',
  family: 'links',
  level: 'error',
  *check(examined): Generator<Draft> {
    yield* inCatalogue(examined);
    yield* inProcedures(examined);
    yield* atVerbs(examined);
  },
};

function* inCatalogue(examined: Examined): Generator<Draft> {
  for (const fact of examined.facts('item-wrong-kind')) {
    yield {
      place: fact.place,
      item: fact.id,
      message: `${code(fact.member)} names ${code(fact.id)}, which is ${kindWord(fact.found)}; ${oneOf(fact.expected.map(kindWord))} is expected`,
      data: factsOf(fact, ['kind']),
      help: 'Name another entry, or take this one out.',
    };
  }
}

function* inProcedures(examined: Examined): Generator<Draft> {
  for (const fact of examined.facts('reference-unfit')) {
    yield {
      place: fact.place,
      procedure: fact.procedure,
      item: fact.item,
      message: `${code(fact.member)} names ${code(fact.item)}, which is ${kindWord(fact.itemKind)}; ${oneOf(fact.expected.map(kindWord))} is expected`,
      data: factsOf(fact, ['kind', 'procedure']),
      help: 'Name another entry, or take this one out.',
    };
  }
  for (const fact of examined.facts('position-missing')) {
    const thing = thingOf(examined, fact.procedure, fact.item);
    yield {
      place: fact.place,
      procedure: fact.procedure,
      item: fact.item,
      message: sentence(`${the(thing)} is set, but not to which position`),
      data: factsOf(fact, ['kind', 'procedure']),
      help: `Add ${code('to=')} with ${choices(fact.positions)}, such as ${directive('set', thing, { to: fact.positions[0] ?? '' })}.`,
    };
  }
}

function* atVerbs(examined: Examined): Generator<Draft> {
  for (const fact of examined.facts('verb-unfit')) {
    const thing = thingOf(examined, fact.procedure, fact.item);
    yield ledgerDraft(examined, fact, {
      message: `${code(fact.verb)} cannot be said of ${the(thing)}, which is ${kindWord(fact.itemKind)}`,
      help: `Of ${kindWord(fact.itemKind)} these can be said: ${fact.fitting.map(code).join(', ')}.`,
      related: thing.item === undefined ? [] : [declared(thing.item.place, 'it')],
    });
  }
}
