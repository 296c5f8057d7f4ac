import type { ManualFiles, TextFile } from '../../src/source/index.ts';
import { type Job, makeJob } from './generated-job.ts';
import { type Planted, type Slip, slips, slipsInAny } from './planted.ts';
import { chanceFrom } from './random.ts';

export interface Generated {
  readonly files: ManualFiles;
  readonly planted: readonly Planted[];
}

export interface Size {
  readonly machines: number;
  /** Per machine, beside the four that its jobs share. */
  readonly jobs: number;
  /** How many jobs get a slip; at most one each. */
  readonly slips: number;
}

/** A manual from a seed: sound but for the slips that are planted. */
export function generate(seed: number, size: Size): Generated {
  const chance = chanceFrom(seed);
  const texts: TextFile[] = [{ path: 'manual.yaml', text: manualYaml }];
  const jobs: Job[] = [];
  for (let m = 1; m <= size.machines; m += 1) {
    const machine = `press-${m}`;
    const own = Array.from({ length: size.jobs }, (_, i) => makeJob(machine, i + 1, chance));
    texts.push({ path: `machines/${machine}.yaml`, text: machineYaml(machine, own) });
    texts.push(...sharedProcedures(machine));
    jobs.push(...own);
  }
  const planted: Planted[] = [];
  const each = Math.floor(jobs.length / Math.max(1, size.slips));
  for (const [i, job] of jobs.entries()) {
    if (i % each !== 0 || planted.length === size.slips) {
      texts.push({ path: job.file, text: job.text });
    } else {
      const { text, found } = slipFor(job, planted.length)(job);
      texts.push({ path: job.file, text });
      planted.push(found);
    }
  }
  return { files: { texts, unreadable: [], others: [] }, planted };
}

/** Kinds in turn; a job whose reassembly is made for it gets one that can be made in the steps that it has. */
function slipFor(job: Job, turn: number): Slip {
  const possible = job.reassembly === 'reversed' ? slipsInAny : slips;
  const slip = possible[turn % possible.length];
  if (slip === undefined) throw new Error('there is no slip to plant');
  return slip;
}

const manualYaml = `title: Generated manual
document-prefix: GEN
units:
  torque: [N·m, lbf·ft]
  length: [mm, in]
  mass: [kg, lb]
variants:
  guard: { name: guard, values: [no, yes] }
  feed: [hand, hydraulic]
  lamp: { name: work lamp, values: [no, yes] }
  cooling: [air, water]
never:
  - lamp & feed = hand
default-torques:
  - { thread: M8, class: 8.8, torque: 22 N·m }
safety: Local codes and licensed practice come first.
`;

function machineYaml(machine: string, jobs: readonly Job[]): string {
  const kind = (name: keyof Job['entries'], more: readonly string[]): string =>
    [`${name}:`, ...more, ...jobs.flatMap(({ entries }) => entries[name])].join('\n  ');
  return `machine: ${machine}
name: Press ${machine.slice('press-'.length)}

${kind('fasteners', ['drain-plug: { name: drain plug, thread: M14x1.5, torque: 25 N·m }', 'filler-cap: { name: filler cap, tightness: hand-tight }'])}

${kind('parts', ['plug-washer: { name: plug washer, behind: drain-plug, single-use: true }'])}

${kind('connections', [])}

circuits:
  oil: { name: oil, fluid: ISO VG 46, capacity: 20 L, drain: drain-plug, fill: filler-cap }

energy:
  mains: { name: mains supply, type: electrical, isolate-before: [drain-plug, ${jobs.map((_, i) => `j${i + 1}-hose`).join(', ')}] }

${kind('aids', ['oil-pan: { name: oil pan }', 'padlock: { name: padlock }'])}

tools:
  torque-wrench: { name: torque wrench, plural: torque wrenches }
  feeler-gauge: { name: feeler gauge }

consumables:
  cloth: { name: cloth }

${kind('hazards', ['hot-oil: { signal: caution, hazard: Hot oil, harm: Burns, avoid: Wear gloves., raised-by: [{ verb: drain, item: oil }] }'])}
`;
}

function sharedProcedures(machine: string): TextFile[] {
  const procedure = (name: string, title: string, front: string, body: string): TextFile => ({
    path: `procedures/${machine}/${machine}-${name}.md`,
    text: `---\nprocedure: ${machine}-${name}\ntitle: ${title}\nmachine: ${machine}\n${front}---\n\n${body}`,
  });
  const safe = 'mains: isolated\n  padlock: fitted\n';
  return [
    procedure(
      'make-safe',
      'Make the press safe',
      `leaves:\n  ${safe}`,
      `1. :isolate[Turn the main switch off]{item=mains}.\n2. :fit[Lock it with your own padlock]{item=padlock}.\n`,
    ),
    procedure(
      'return',
      'Return the press to service',
      `starts:\n  ${safe}`,
      `1. :withdraw[Take your padlock off]{item=padlock}.\n2. :restore[Turn the main switch on]{item=mains}.\n`,
    ),
    procedure(
      'drain',
      'Drain the oil',
      `starts:\n  ${safe}leaves:\n  ${safe}  oil: drained\n`,
      `1. :fit[Put the oil pan under the plug]{item=oil-pan}.\n2. ::hazard{of=hot-oil}\n\n   :remove[Unscrew the drain plug]{item=drain-plug}. :drain[Let the oil run out]{item=oil}.\n3. :remove[Throw the plug washer away]{item=plug-washer}.\n4. :install[Put a new plug washer on]{item=plug-washer new}.\n5. :install[Screw the drain plug in]{item=drain-plug}. :torque[Torque it]{item=drain-plug with=torque-wrench}.\n6. :withdraw[Take the oil pan away]{item=oil-pan}.\n`,
    ),
    procedure(
      'fill',
      'Fill the oil',
      `starts:\n  ${safe}  oil: drained\nleaves:\n  ${safe}`,
      `1. :remove[Unscrew the filler cap]{item=filler-cap}.\n2. :fill[Fill in new oil up to the mark]{item=oil}.\n3. :install[Screw the filler cap on]{item=filler-cap}.\n`,
    ),
  ];
}
