import type { LinkedManual } from '../link/index.ts';
import { Completer } from '../reverse/index.ts';
import { comparePlaces, locator, type ManualFiles } from '../source/index.ts';
import type { Examined, Fact } from './rule.ts';
import { rules } from './rules.ts';

/** What rules look at, from what the rooms before have found. */
export function makeExamined(
  linked: LinkedManual,
  facts: readonly Fact[],
  files: ManualFiles,
  expanded: LinkedManual = linked,
): Examined {
  const texts = new Map(files.texts.map(({ path, text }) => [path, text]));
  const inOrder = [...facts, ...unreadable(facts, files)].toSorted((a, b) =>
    comparePlaces(a.place, b.place),
  );
  const completer = new Completer(expanded);
  return {
    linked,
    expanded,
    completion: (procedure, item) => completer.complete(procedure, item)?.edits,
    ruleIds: rules.map(({ id }) => id),
    facts: factsAmong(inOrder),
    text: (file) => texts.get(file) ?? '',
  };
}

/** Gives out facts by their kinds. */
export function factsAmong(facts: readonly Fact[]): Examined['facts'] {
  return <K extends Fact['kind']>(...kinds: readonly K[]) =>
    facts.filter((fact): fact is Extract<Fact, { kind: K }> => isOneOf(kinds, fact.kind));
}

/** Files that could not be read, each told once. */
function unreadable(facts: readonly Fact[], { unreadable: files }: ManualFiles): readonly Fact[] {
  const told = new Set(
    facts.filter(({ kind }) => kind === 'file-unreadable').map(({ place }) => place.file),
  );
  return files
    .filter(({ path }) => !told.has(path))
    .map(({ path, reason, advice }) => ({
      kind: 'file-unreadable',
      place: locator(path, '').place(0, 0),
      reason,
      ...(advice !== undefined && { advice }),
    }));
}

const isOneOf = (kinds: readonly string[], kind: string): boolean => kinds.includes(kind);
