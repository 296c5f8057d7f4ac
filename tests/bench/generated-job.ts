import type { Chance } from './random.ts';

/** Part that is taken off with its bolts before the next one can be reached. */
interface Layer {
  readonly part: string;
  readonly bolt: string;
  readonly name: string;
  readonly count: number;
}

/** A job on a machine: its procedure, and the catalogue entries that only it works on. */
export interface Job {
  readonly id: string;
  readonly file: string;
  readonly text: string;
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
  return {
    id,
    file: `procedures/${machine}/${id}.md`,
    text: textOf({ id, machine, number, place, layers, limit: chance.between(5, 40) }),
    entries: entriesOf(number, place, layers),
  };
}

interface Words {
  readonly id: string;
  readonly machine: string;
  readonly number: number;
  readonly place: string;
  readonly layers: readonly Layer[];
  readonly limit: number;
}

function entriesOf(number: number, place: string, layers: readonly Layer[]): Job['entries'] {
  const last = layers.at(-1)?.part ?? '';
  const behind = (i: number): string => (i === 0 ? '' : `, behind: ${layers[i - 1]?.part}`);
  return {
    fasteners: layers.map(
      ({ part, bolt, name, count }, i) =>
        `${bolt}: { name: bolt of the ${name}, plural: bolts of the ${name}, count: ${count}, thread: M8, class: 8.8, stack: [flat washer], pattern: { circle: ${count} }, holds: ${part}${behind(i)} }`,
    ),
    parts: [
      ...layers.map(
        ({ part, name }, i) => `${part}: { name: ${name}, mass: ${i + 3} kg${behind(i)} }`,
      ),
      `j${number}-gasket: { name: gasket ${number}, behind: ${last}, single-use: true }`,
    ],
    connections: [
      `j${number}-hose: { name: hose ${number}, type: hose, circuit: oil, cap-when-open: true, on: ${layers[0]?.part}, torque: 30 N·m }`,
    ],
    aids: [`j${number}-stand: { name: stand ${number}, note: Carries the ${place} end. }`],
    hazards: [
      `j${number}-drop: { signal: warning, hazard: Heavy part ${number} can drop, harm: Crushed hands, avoid: Keep your hands out of the gap., raised-by: [{ verb: remove, item: ${last} }] }`,
    ],
  };
}

function textOf({ id, machine, number, place, layers, limit }: Words): string {
  const j = `j${number}`;
  const last = layers.length - 1;
  const off = layers.flatMap(({ part, bolt, name, count }, i) => [
    `:remove[Take out the ${count} bolts of the ${name}]{item=${bolt}}. Keep each bolt with its washer.\n   ::step{time="4 min"}`,
    `${i === last ? `::hazard{of=${j}-drop}\n\n   ` : ''}:remove[Lift the ${name} off and lay it on clean wood]{item=${part}}.\n   ::step{people=2 time="3 min"}`,
  ]);
  const on = layers
    .toReversed()
    .flatMap(({ part, bolt, name, count }) => [
      `Wipe the joint faces clean. :install[Put the ${name} on]{item=${part}}.\n   ::step{people=2 consumables=cloth time="3 min"}`,
      `:install[Put in the ${count} bolts of the ${name}, each with its washer]{item=${bolt}}.`,
      `:torque[Torque the ${count} bolts of the ${name}]{item=${bolt} with=torque-wrench}.\n   ::step{time="2 min"}\n\n   :::torque{item=${bolt}}\n   :::`,
    ]);
  return `---
procedure: ${id}
title: Replace the gasket ${number} at the ${place} end
machine: ${machine}
document: "${number}"
revision: 1
system: Job cards
summary: Exchanges the gasket behind the ${layers[last]?.name} and checks the gap.
---

The circuit is drained first: see [Drain the oil](${machine}-drain.md). Keep dirt away from the **open** hose.
The gasket seals the gap between the last two parts. It is thrown away each time that it comes off, because a gasket
that was once pressed flat does not seal a second time. Order the new one before the work begins.

Two people do this job in about one hour. The heavy parts are named on the sheet with their mass. Work on a clean bench,
lay the parts down in the order in which they come off, and keep the bolts of each part together in a tray of its own.

- The joint faces must be dry and free of oil.
- No bolt may be shorter than the one that came out.
- A bolt with a stretched or dirty thread is *not* used again.
- The reading of the gap goes into the log of the machine.

| Reading | Limit |
| --- | --- |
| gap | ${limit / 100} mm |

## Preparation

${steps([
  `::perform{procedure=${machine}-make-safe}`,
  `::perform{procedure=${machine}-drain}`,
  `:fit[Set the stand ${number} under the ${place} end]{item=${j}-stand}.\n   ::step{#carried time="5 min"}`,
])}

## Removal

${steps([
  `:disconnect[Undo the hose ${number}]{item=${j}-hose}. :cap[Close its open end with a cap]{item=${j}-hose}.\n   ::step{needs=carried time="2 min"}`,
  ...off,
  `:remove[Peel the gasket off and throw it away]{item=${j}-gasket}.`,
])}

## Inspection

${steps([
  `Look along the joint faces. :check[Check the ${layers[last]?.name} for cracks]{item=${layers[last]?.part}}.`,
  `:measure[Lay the straightedge across and measure the largest gap]{item=${layers[last]?.part} with=feeler-gauge value="max ${limit / 100} mm"}.\n   ::step{time="5 min"}`,
])}

## Reassembly

${steps([
  `:install[Lay a new gasket on]{item=${j}-gasket new}.`,
  ...on,
  `:uncap[Take the cap off the hose ${number}]{item=${j}-hose}. :connect[Screw the hose on]{item=${j}-hose}. :torque[Torque its nut]{item=${j}-hose with=torque-wrench}.`,
  `:withdraw[Take the stand ${number} away]{item=${j}-stand}.`,
])}

## Completion

${steps([
  `::perform{procedure=${machine}-fill}`,
  `::perform{procedure=${machine}-return}`,
  'After the first hour of work, make sure that no joint weeps. Write the gap into the log of the machine, with the date and your name.',
])}
`;
}

function steps(texts: readonly string[]): string {
  return texts
    .map((text, i) => {
      const number = `${i + 1}. `;
      return number + text.replaceAll('\n   ', `\n${' '.repeat(number.length)}`);
    })
    .join('\n');
}
