import type { Layer, Reassembly } from './generated-job.ts';

export interface JobWords {
  readonly id: string;
  readonly machine: string;
  readonly number: number;
  readonly place: string;
  readonly layers: readonly Layer[];
  /** Of the gap, in hundredths of a millimetre. */
  readonly limit: number;
  readonly reassembly: Reassembly;
}

/** The Markdown of a job. The slips that are planted look for its words. */
export function jobText(words: JobWords): string {
  const { id, machine, number, place, layers, limit, reassembly } = words;
  const j = `j${number}`;
  const last = layers.at(-1);
  return `---
procedure: ${id}
title: Replace the gasket ${number} at the ${place} end
machine: ${machine}
${number % 10 === 7 ? 'when: cooling = water\n' : ''}document: "${number}"
revision: 1
system: Job cards
summary: Exchanges the gasket behind the ${last?.name} and checks the gap.
---

${foreword(words)}
## Preparation

${steps([
  `::perform{procedure=${machine}-make-safe}`,
  `::perform{procedure=${machine}-drain}`,
  `:fit[Set the stand ${number} under the ${place} end]{item=${j}-stand}.\n   ::step{#carried time="5 min"}`,
])}

## Removal

${steps(removal(words))}

## Inspection

${steps([
  `Look along the joint faces. :check[Check the ${last?.name} for cracks]{item=${last?.part}}.`,
  `:measure[Lay the straightedge across and measure the largest gap]{item=${last?.part} with=feeler-gauge value="max ${limit / 100} mm"}.\n   ::step{time="5 min"}`,
  `Look at the pipes of the cooler. They must be dry.\n   ::step{when="cooling = water" time="1 min"}`,
])}

## Reassembly

${reassembly === 'reversed' ? '::reverse{of=removal}' : steps(assembly(words))}

## Completion

${steps([
  `:withdraw[Take the stand ${number} away]{item=${j}-stand}.`,
  `::perform{procedure=${machine}-fill}`,
  `::perform{procedure=${machine}-return}`,
  'After the first hour of work, make sure that no joint weeps. Write the gap into the log of the machine, with the date and your name.',
])}
`;
}

function foreword({ machine, number, layers, limit }: JobWords): string {
  const before = number === 1 ? 'drain' : `job-${number - 1}`;
  return `The circuit is drained first: see [Drain the oil](${machine}-drain.md). Keep dirt away from the **open** hose.
The gasket seals the gap between the last two parts. It is thrown away each time that it comes off, because a gasket
that was once pressed flat does not seal a second time. Order the new one before the work begins.

Two people do this job in about one hour. The heavy parts are named on the sheet with their mass. Work on a clean bench,
lay the parts down in the order in which they come off, and keep the bolts of each part together in a tray of its own.
Where both are due, this job goes with [the one beside it](${machine}-${before}.md): the oil is then lost only once.

- The joint faces must be dry and free of oil.
- No bolt may be shorter than the one that came out.
- A bolt with a stretched or dirty thread is *not* used again.
- The reading of the gap goes into the log of the machine.

| Reading | Limit |
| --- | --- |
| gap | ${limit / 100} mm |

| Tray | Part | Bolts |
| --- | --- | ---: |
${layers.map(({ name, count }, i) => `| ${i + 1} | ${name} | ${count} |`).join('\n')}
`;
}

function removal({ number, layers }: JobWords): readonly string[] {
  const j = `j${number}`;
  return [
    `:disconnect[Undo the hose ${number}]{item=${j}-hose}. :cap[Close its open end with a cap]{item=${j}-hose}.\n   ::step{needs=carried time="2 min"}`,
    `:disconnect[Unplug the lamp cable ${number}]{item=${j}-lamp}.\n   ::step{when="lamp & feed = hydraulic" time="1 min"}`,
    `:remove[Undo the 2 screws of the guard ${number}]{item=${j}-guard-screw}. :remove[Take the guard ${number} off]{item=${j}-guard}.\n   ::step{when=guard time="2 min"}`,
    ...layers.flatMap(({ part, bolt, name, count }, i) => [
      `:remove[Take out the ${count} bolts of the ${name}]{item=${bolt}}. Keep each bolt with its washer.\n   ::step{time="4 min"}`,
      `${i === layers.length - 1 ? `::hazard{of=${j}-drop}\n\n   ` : ''}:remove[Lift the ${name} off and lay it on clean wood]{item=${part}}.\n   ::step{people=2 time="3 min"}`,
    ]),
    `:remove[Peel the gasket off and throw it away]{item=${j}-gasket}.`,
  ];
}

function assembly({ number, layers }: JobWords): readonly string[] {
  const j = `j${number}`;
  return [
    `:install[Lay a new gasket on]{item=${j}-gasket new}.`,
    ...layers
      .toReversed()
      .flatMap(({ part, bolt, name, count }) => [
        `Wipe the joint faces clean. :install[Put the ${name} on]{item=${part}}.\n   ::step{people=2 consumables=cloth time="3 min"}`,
        `:install[Put in the ${count} bolts of the ${name}, each with its washer]{item=${bolt}}.`,
        `:torque[Torque the ${count} bolts of the ${name}]{item=${bolt} with=torque-wrench}.\n   ::step{time="2 min"}\n\n   :::torque{item=${bolt}}\n   :::`,
      ]),
    `:install[Put the guard ${number} on]{item=${j}-guard}.\n   ::step{when=guard}`,
    `:install[Put in the 2 screws of the guard ${number}]{item=${j}-guard-screw}. :torque[Torque them]{item=${j}-guard-screw with=torque-wrench}.\n   ::step{when=guard time="3 min"}`,
    `:connect[Plug the lamp cable ${number} in]{item=${j}-lamp}.\n   ::step{when="lamp & feed = hydraulic"}`,
    `:uncap[Take the cap off the hose ${number}]{item=${j}-hose}. :connect[Screw the hose on]{item=${j}-hose}. :torque[Torque its nut]{item=${j}-hose with=torque-wrench}.`,
  ];
}

/** An ordered list; each further line stands under the words of its step. */
function steps(texts: readonly string[]): string {
  return texts
    .map((text, i) => {
      const number = `${i + 1}. `;
      return number + text.replaceAll('\n   ', `\n${' '.repeat(number.length)}`);
    })
    .join('\n');
}
