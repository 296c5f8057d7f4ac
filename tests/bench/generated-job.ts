import { jobText } from './job-text.ts';
import type { Chance } from './random.ts';

/** Part that is taken off with its bolts before the next one can be reached. */
export interface Layer {
  readonly part: string;
  readonly bolt: string;
  readonly name: string;
  readonly count: number;
}

/** How a job puts back what it took off: in steps of its own, or by `::reverse`. */
export type Reassembly = 'written' | 'reversed';

/** A job on a machine: its procedure, and the catalogue entries that only it works on. */
export interface Job {
  readonly id: string;
  readonly file: string;
  readonly text: string;
  readonly reassembly: Reassembly;
  /** Lines of YAML by kind. */
  readonly entries: Readonly<
    Record<'fasteners' | 'parts' | 'connections' | 'aids' | 'hazards', readonly string[]>
  >;
}

const places = ['front', 'rear', 'left', 'right', 'upper', 'lower'] as const;
const things = ['cover', 'plate', 'housing', 'bracket', 'flange', 'carrier'] as const;
const nth = ['outer', 'second', 'third', 'inner'] as const;

export function makeJob(machine: string, number: number, chance: Chance): Job {
  const id = `${machine}-job-${number}`;
  const place = chance.oneOf(places);
  const layers = nth.slice(0, chance.between(3, 4)).map((which, i): Layer => {
    const name = `${which} ${place} ${chance.oneOf(things)} ${number}`;
    return {
      part: `j${number}-part-${i}`,
      bolt: `j${number}-bolt-${i}`,
      name,
      count: chance.between(3, 8),
    };
  });
  const reassembly = number % 4 === 0 ? 'reversed' : 'written';
  const limit = chance.between(5, 40);
  return {
    id,
    file: `procedures/${machine}/${id}.md`,
    text: jobText({ id, machine, number, place, layers, limit, reassembly }),
    reassembly,
    entries: entriesOf(number, place, layers),
  };
}

function entriesOf(number: number, place: string, layers: readonly Layer[]): Job['entries'] {
  const j = `j${number}`;
  const last = layers.at(-1)?.part ?? '';
  const behind = (i: number): string => `, behind: ${i === 0 ? `${j}-guard` : layers[i - 1]?.part}`;
  return {
    fasteners: [
      `${j}-guard-screw: { name: screw of the guard ${number}, plural: screws of the guard ${number}, count: 2, thread: M6, class: 8.8, torque: 9 N·m, holds: ${j}-guard, when: guard }`,
      ...layers.map(
        ({ part, bolt, name, count }, i) =>
          `${bolt}: { name: bolt of the ${name}, plural: bolts of the ${name}, count: ${count}, thread: M8, class: 8.8, stack: [flat washer], pattern: { circle: ${count} }, holds: ${part}${behind(i)} }`,
      ),
    ],
    parts: [
      `${j}-guard: { name: guard ${number}, when: guard }`,
      ...layers.map(
        ({ part, name }, i) => `${part}: { name: ${name}, mass: ${i + 3} kg${behind(i)} }`,
      ),
      `${j}-gasket: { name: gasket ${number}, behind: ${last}, single-use: true }`,
    ],
    connections: [
      `${j}-hose: { name: hose ${number}, type: hose, circuit: oil, cap-when-open: true, on: ${layers[0]?.part}, torque: 30 N·m }`,
      `${j}-lamp: { name: lamp cable ${number}, type: cable, on: ${layers[0]?.part}, when: lamp & feed = hydraulic }`,
    ],
    aids: [`${j}-stand: { name: stand ${number}, note: Carries the ${place} end. }`],
    hazards: [
      `${j}-drop: { signal: warning, hazard: Heavy part ${number} can drop, harm: Crushed hands, avoid: Keep your hands out of the gap., raised-by: [{ verb: remove, item: ${last} }] }`,
    ],
  };
}
