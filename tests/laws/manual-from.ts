import fc from 'fast-check';
import { printCondition } from '../../src/applicability/index.ts';
import { readManual } from '../../src/catalogue/index.ts';
import { type LinkedManual, linkManual } from '../../src/link/index.ts';
import { parseProcedure } from '../../src/syntax/index.ts';
import { conditionArbitrary } from '../applicability/enumeration.ts';
import { filesOf } from '../support/manual.ts';
import { balancedArbitrary } from './balanced.ts';
import { cleanJob } from './clean-job.ts';
import { markdownOf, type Piece, piecesArbitrary } from './script.ts';
import { sometimes } from './sometimes.ts';
import { textsOf, type World, worldArbitrary } from './world.ts';

/** A world, a job in it, and another job that the first one may perform. */
export interface Given {
  readonly world: World;
  readonly texts: Readonly<Record<string, string>>;
}

export interface Shape {
  readonly withBranches: boolean;
  readonly withPerform: boolean;
}

export function givenArbitrary(shape: Shape): fc.Arbitrary<Given> {
  return worldArbitrary
    .chain((world) =>
      fc.record({
        world: fc.constant(world),
        job: piecesArbitrary(world, shape),
        other: balancedArbitrary(world, { mayStayAway: true }),
        when: sometimes(conditionArbitrary(world.attributes), 3),
        starts: statesArbitrary(world),
      }),
    )
    .map(({ world, job, other, when, starts }) => {
      const front = when === undefined ? {} : { when: printCondition(when) };
      const base = textsOf(world);
      const clean = shape.withPerform
        ? cleanJob('other', [...other.away, ...other.back], starts, base)
        : undefined;
      const texts = {
        ...base,
        'procedures/job.md': procedureText('job', job, front),
        ...(clean !== undefined && { 'procedures/other.md': clean.text }),
      };
      return { world, texts, isWhole: !shape.withPerform || clean !== undefined };
    })
    .filter(({ isWhole }) => isWhole);
}

export function procedureText(id: string, pieces: readonly Piece[], front: object): string {
  const matter = { procedure: id, title: id, machine: 'm', ...front };
  return `---\n${JSON.stringify(matter)}\n---\n\n${markdownOf(pieces, id)}`;
}

/** Reads and links texts; throws where they are not what the generator meant. */
export function linkedFrom(texts: Readonly<Record<string, string>>): LinkedManual {
  const files = filesOf(texts);
  const manual = readManual(files);
  const procedures = files.texts
    .filter(({ path }) => path.startsWith('procedures/'))
    .map((file) => parseProcedure(file));
  const parsed = procedures.flatMap(({ value }) => (value === undefined ? [] : [value]));
  const linked = linkManual(manual.value, parsed, files);
  const facts = [...manual.facts, ...procedures.flatMap((one) => one.facts), ...linked.facts];
  const faults = facts.filter(({ kind }) => !harmless.includes(kind));
  if (faults.length > 0) throw new Error(JSON.stringify({ faults, texts }, undefined, 1));
  return linked.value;
}

/** Up to two entries that are not at home, in states that they can be in. */
export function statesArbitrary({ entries }: World): fc.Arbitrary<Record<string, string>> {
  const states: Readonly<Record<string, readonly string[]>> = {
    fasteners: ['out', 'loose'],
    parts: ['out', 'aside'],
    connections: ['open', 'capped'],
    circuits: ['drained', 'filled'],
    energy: ['isolated'],
    controls: ['up'],
    aids: ['fitted'],
  };
  return fc
    .array(
      fc
        .constantFrom(...entries)
        .chain(({ id, family }) =>
          fc.constantFrom(...(states[family] ?? [])).map((state) => [id, state] as const),
        ),
      { maxLength: 2 },
    )
    .map((pairs) => Object.fromEntries(pairs));
}

/** A generated condition may hold for every machine or none, and a catalogue be in nobody's order: that is told. */
const harmless: readonly string[] = ['condition-wrong', 'variants-wrong', 'precedence-cycle'];
