import { expect } from 'vitest';
import { type Procedure, parseProcedure } from '../../src/syntax/index.ts';

export const frontMatter = '---\nprocedure: replace-anvil\ntitle: Replace the anvil\n---\n\n';

export type Fact = ReturnType<typeof parseProcedure>['facts'][number];

export interface Read {
  readonly procedure: Procedure;
  readonly facts: readonly Fact[];
  /** The text without its carets, front matter included. */
  readonly text: string;
}

/**
 * Reads the body of a procedure in which lines of carets mark what the facts should be at, each with the
 * kind of the fact after it: `   ^^^^ attribute-wrong`. There must be these facts and no others.
 */
export function read(marked: string): Read {
  const { text, marks } = unmark(`${frontMatter}${marked}`);
  const { value, facts } = parseProcedure({ path: 'procedures/replace-anvil.md', text });
  const found = facts.map(
    ({ kind, place }) =>
      `${kind} at ${place.start.offset}: ${text.slice(place.start.offset, place.end.offset)}`,
  );
  const wanted = marks.map(
    ({ kind, start, end }) => `${kind} at ${start}: ${text.slice(start, end)}`,
  );
  expect(found.toSorted()).toEqual(wanted.toSorted());
  if (value === undefined) throw new Error('there is no procedure');
  return { procedure: value, facts, text };
}

/** The data of a fact, without its place. */
export function dataOf({ facts }: Read, index = 0): object {
  const fact = facts[index];
  if (fact === undefined) throw new Error(`there is no fact ${index}`);
  const { place: _, ...data } = fact;
  return data;
}

interface Mark {
  readonly kind: string;
  readonly start: number;
  readonly end: number;
}

function unmark(marked: string): { text: string; marks: Mark[] } {
  const kept: string[] = [];
  const marks: Mark[] = [];
  let lineStart = 0;
  let next = 0;
  for (const line of marked.split('\n')) {
    const mark = /^( *)(\^+) ([a-z-]+)$/.exec(line);
    if (mark === null) {
      kept.push(line);
      lineStart = next;
      next += line.length + 1;
      continue;
    }
    const [, blank = '', carets = '', kind = ''] = mark;
    const start = lineStart + blank.length;
    marks.push({ kind, start, end: start + carets.length });
  }
  return { text: kept.join('\n'), marks };
}
