import { readManual } from '../../src/catalogue/index.ts';
import { keepLedger } from '../../src/ledger/index.ts';
import { type LinkedManual, linkManual } from '../../src/link/index.ts';
import type { ManualFiles } from '../../src/source/index.ts';
import { parseProcedure } from '../../src/syntax/index.ts';

// What the ledger costs with 24 independent yes/no options (16.8 million machines), as a multiple of none.

const options = Array.from({ length: 24 }, (_, i) => `option-${i + 1}`);
const rounds = 41;

/** Prints the ratios; answers with them. */
export function measureVariants(): readonly number[] {
  return shapes.map(({ name, job }) => {
    const [none, all] = [filesOf(job(false)), filesOf(job(true))];
    const [base, time] = quartiles(none, all);
    const ratio = time / base;
    console.log(
      `24 options, ${name}: ledger ${time.toFixed(2)} ms, none ${base.toFixed(2)} ms, ${ratio.toFixed(2)} x`,
    );
    return ratio;
  });
}

interface Job {
  readonly entries: readonly string[];
  readonly steps: readonly string[];
}

const shapes: readonly { readonly name: string; readonly job: (isGuarded: boolean) => Job }[] = [
  {
    name: 'each with bolts and a cover of its own',
    job: (isGuarded) => ({
      entries: [
        'fasteners:',
        ...options.map(
          (_, i) => `  bolt-${i}: { name: bolt, count: 4, torque: 22 N·m, holds: cover-${i} }`,
        ),
        'parts:',
        ...options.map((_, i) => `  cover-${i}: { name: cover }`),
      ],
      steps: [
        ...options.map((id, i) =>
          guarded(`:remove{item=bolt-${i}}. :remove{item=cover-${i}}`, isGuarded, id),
        ),
        ...options.map((id, i) =>
          guarded(
            `:install{item=cover-${i}}. :install{item=bolt-${i}}. :torque{item=bolt-${i}}`,
            isGuarded,
            id,
          ),
        ),
      ],
    }),
  },
  {
    name: 'each with one bolt of the same 24',
    job: (isGuarded) => ({
      entries: [
        'fasteners:',
        '  bolt: { name: bolt, count: 24, torque: 22 N·m, holds: cover }',
        'parts:',
        '  cover: { name: cover }',
      ],
      steps: [
        ...options.map((id) => guarded(':remove{item=bolt qty=1}', isGuarded, id)),
        ...options.map((id) =>
          guarded(':install{item=bolt qty=1}. :torque{item=bolt qty=1}', isGuarded, id),
        ),
      ],
    }),
  },
];

function guarded(words: string, isGuarded: boolean, option: string): string {
  return `1. ${words}.${isGuarded ? `\n   ::step{when=${option}}` : ''}`;
}

function filesOf({ entries, steps }: Job): ManualFiles {
  const variants = options.map((id) => `  ${id}: ["yes", "no"]`);
  const texts = [
    { path: 'manual.yaml', text: ['title: Options', 'variants:', ...variants].join('\n') },
    { path: 'machines/m.yaml', text: ['machine: m', 'name: M', ...entries].join('\n') },
    {
      path: 'procedures/job.md',
      text: `---\nprocedure: job\ntitle: Job\nmachine: m\n---\n\n${steps.join('\n\n')}\n`,
    },
  ];
  return { texts, unreadable: [], others: [] };
}

/**
 * Milliseconds of the ledger, taken in turn; every round has a space of its own, which remembers nothing.
 * The lower quartile of the rounds, since whatever else the machine does can only add to one.
 */
function quartiles(...all: readonly [ManualFiles, ManualFiles]): [number, number] {
  const times = all.map((): number[] => []);
  for (let round = -10; round < rounds; round += 1) {
    for (const [i, files] of all.entries()) {
      const linked = link(files);
      const start = performance.now();
      const facts = keepLedger(linked);
      const time = performance.now() - start;
      if (facts.length > 0)
        throw new Error(`the job does not balance: ${JSON.stringify(facts[0])}`);
      if (round >= 0) times[i]?.push(time);
    }
  }
  const [first = Number.NaN, second = Number.NaN] = times.map(
    (some) => some.toSorted((a, b) => a - b)[Math.floor(some.length / 4)],
  );
  return [first, second];
}

function link(files: ManualFiles): LinkedManual {
  const { value } = readManual(files);
  const procedures = files.texts
    .filter(({ path }) => path.startsWith('procedures/'))
    .flatMap((file) => parseProcedure(file).value ?? []);
  return linkManual(value, procedures, files).value;
}

if (import.meta.main) measureVariants();
