import type { Edit } from '../../schemas/finding.ts';
import type { Catalogue, Item } from '../catalogue/index.ts';
import type { LinkedManual } from '../link/index.ts';
import { comparePlaces } from '../source/index.ts';
import type { Examined, Fact, Subject } from './rule.ts';
import { rules } from './rules.ts';

/** One part of a manual, with what the rooms before have told of it. */
export interface Part {
  readonly linked: LinkedManual;
  readonly expanded: LinkedManual;
  readonly subjects: readonly Subject[];
  readonly machines: readonly Catalogue[];
  readonly hasSettings: boolean;
  readonly facts: readonly Fact[];
  /** Text of a file of the manual; empty when there is none. */
  readonly text: (file: string) => string;
  readonly completion?: (procedure: string, item: string) => readonly Edit[] | undefined;
}

/** What rules look at. */
export function makeExamined(part: Part): Examined {
  const { linked, expanded, subjects, machines, hasSettings, facts, text, completion } = part;
  return {
    linked,
    expanded,
    subjects,
    machines,
    hasSettings,
    entries: [
      ...machines.flatMap(({ items }) => [...items.values()]),
      ...subjects.flatMap(ownEntries),
    ],
    ruleIds: rules.map(({ id }) => id),
    facts: factsAmong(facts.toSorted((a, b) => comparePlaces(a.place, b.place))),
    text,
    completion: completion ?? (() => undefined),
  };
}

/** Gives out facts by their kinds. */
export function factsAmong(facts: readonly Fact[]): Examined['facts'] {
  return <K extends Fact['kind']>(...kinds: readonly K[]) =>
    facts.filter((fact): fact is Extract<Fact, { kind: K }> => isOneOf(kinds, fact.kind));
}

const ownEntries = ({ one: { procedure, catalogue } }: Subject): Item[] =>
  procedure.front.items === undefined
    ? []
    : [...catalogue.items.values()].filter(({ place }) => place.file === procedure.file);

const isOneOf = (kinds: readonly string[], kind: string): boolean => kinds.includes(kind);
