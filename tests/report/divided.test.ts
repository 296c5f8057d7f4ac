import { hash } from 'node:crypto';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readManualFiles } from '../../src/command/read-manual-files.ts';
import {
  inspect,
  inspectShare,
  joinShares,
  type NamedShare,
  reportAsJunit,
  reportAsSarif,
  reportAsText,
  shareFrom,
  shareOut,
  signOf,
  sortedFiles,
  subjectsOf,
} from '../../src/report/index.ts';
import type { ManualFiles, TextFile } from '../../src/source/index.ts';
import { generate } from '../bench/generate.ts';
import { changedText } from '../fuzz/changed-text.ts';

const demo = await readManualFiles('content');
const today = '2026-01-01';
const digest = (text: string): string => hash('sha1', text);

/** One share, through JSON as it goes from one machine to another. */
async function shared(
  files: ManualFiles,
  number: number,
  of: number,
  asked: (path: string) => void = () => {},
): Promise<NamedShare> {
  const { texts, ...others } = sortedFiles(files);
  const byPath = new Map(texts.map(({ path, text }) => [path, text]));
  const checked = await inspectShare(
    {
      ...others,
      signs: texts.map((file) => signOf(file, digest)),
      textOf: async (path) => {
        asked(path);
        return byPath.get(path) ?? '';
      },
    },
    { version: 'test', digest, share: { number, of }, folder: 'manual/' },
  );
  const share = shareFrom(JSON.parse(JSON.stringify(checked)));
  if (share === undefined) throw new Error('a share does not fit its schema');
  return { name: `${number}.json`, share };
}

const allShares = (files: ManualFiles, of: number): Promise<NamedShare[]> =>
  Promise.all(Array.from({ length: of }, (_, i) => shared(files, i + 1, of)));

function joined([first, ...rest]: readonly NamedShare[]) {
  if (first === undefined) throw new Error('no shares');
  return joinShares([first, ...rest], 'test', { today });
}

/** What is printed of a report, in the formats that need more than the report. */
function forms(
  report: Parameters<typeof reportAsText>[0],
  texts: readonly TextFile[],
  procedures: readonly { readonly id: string; readonly file: string }[],
): readonly string[] {
  const textOf = (path: string): string => texts.find((one) => one.path === path)?.text ?? '';
  const context = { rules: [], levels: {}, texts, folder: 'manual/', exitCode: 0 };
  return [
    JSON.stringify(report),
    reportAsText(report, textOf),
    reportAsSarif(report, context),
    reportAsJunit(report, subjectsOf(procedures, texts)),
  ];
}

async function expectSame(files: ManualFiles, shares: readonly NamedShare[]): Promise<void> {
  const { report, linked } = inspect(files, 'test', { today });
  const answer = joined(shares);
  if ('faults' in answer) throw new Error(JSON.stringify(answer.faults));
  const { value } = answer;
  const byId = [...linked.outlines.byId.values()].map(({ id, file }) => ({ id, file }));
  expect(forms(value.report, value.texts, value.procedures)).toEqual(
    forms(report, sortedFiles(files).texts, byId),
  );
}

/** Changes of a few files of a manual; a file away, one twice. */
const changed = (files: ManualFiles): fc.Arbitrary<ManualFiles> => {
  const file = fc.nat({ max: files.texts.length - 1 });
  const edits = fc.array(
    file.chain((at) => changedText(files.texts[at]?.text ?? '').map((text) => ({ at, text }))),
    { maxLength: 12 },
  );
  return fc.record({ edits, away: fc.option(file), twice: fc.option(file) }).map((change) => {
    const texts = files.texts.map((one, at) => ({
      ...one,
      text: change.edits.findLast((edit) => edit.at === at)?.text ?? one.text,
    }));
    const copy = change.twice === null ? undefined : texts[change.twice];
    const kept = texts.filter((_, at) => at !== change.away);
    const more = copy && { ...copy, path: copy.path.replace(/^(\w+)\//, '$1/copy/') };
    const isNew = more !== undefined && !kept.some(({ path }) => path === more.path);
    return { ...files, texts: isNew ? [...kept, more] : kept };
  });
};

const generated = generate(3, { machines: 3, jobs: 6, slips: 9 }).files;

describe('shares of a manual, joined', () => {
  it.for([1, 2, 5, 8])('give the report of the whole demo manual, in %i shares', async (of) => {
    const shares = await allShares(demo, of);
    await expectSame(demo, shares);
    await expectSame(demo, shares.toReversed());
  });

  it('give that of a manual in more shares than it has files', async () => {
    const { texts } = demo;
    const few = { ...demo, texts: texts.filter(({ path }) => !path.startsWith('procedures/h')) };
    const small = { ...few, texts: few.texts.slice(-4) };
    await expectSame(small, await allShares(small, 9));
  });

  it('know the sections and steps of other shares to which they link, and those that are not', async () => {
    const sheet = (name: string, to: string): TextFile => ({
      path: `procedures/${name}.md`,
      text: `---\nprocedure: ${name}\ntitle: ${name}\n---\n\n## The ${name} part\n\n1. See [there](${to}.md#the-${to}-part), [here](${to}.md#last) and [nowhere](${to}.md#the-${to}-prt).\n2. Look.\n   ::step{#last}\n`,
    });
    const names = ['alpha', 'bravo', 'charlie', 'delta'];
    const linked: ManualFiles = {
      texts: [
        { path: 'manual.yaml', text: 'title: Links\n' },
        ...names.map((name, i) => sheet(name, names[(i + 1) % names.length] ?? '')),
      ],
      unreadable: [],
      others: [],
    };
    const { report } = inspect(linked, 'test', { today });
    expect(report.findings.filter(({ rule }) => rule === 'broken-link')).toHaveLength(4);
    for (const of of [2, 3, 5]) await expectSame(linked, await allShares(linked, of));
  });

  it('read in full only what they depend on', async () => {
    const asked = new Set<string>();
    for (const number of [1, 2, 3]) await shared(generated, number, 3, (path) => asked.add(path));
    expect(asked.size).toBe(generated.texts.length);
    asked.clear();
    const { share } = await shared(generated, 1, 3, (path) => asked.add(path));
    const own = new Set(share.parts.map(({ path }) => path));
    expect([...asked].filter((path) => path.endsWith('.md') && !own.has(path))).toEqual([]);
    expect(own.size).toBeLessThan(generated.texts.length / 2);
  });

  it.for([
    ['the demo manual', demo],
    ['a generated one', generated],
  ] as const)(
    'give that of %s with faults put in, in any order',
    {
      timeout: 300_000,
    },
    async ([, files]) => {
      await fc.assert(
        fc.asyncProperty(
          changed(files),
          fc.integer({ min: 1, max: 8 }),
          fc.infiniteStream(fc.nat()),
          async (one, of, turns) => {
            const shares = await allShares(one, of);
            const inTurn = shares
              .map((share) => ({ share, turn: turns.next().value }))
              .toSorted((a, b) => a.turn - b.turn);
            await expectSame(
              one,
              inTurn.map(({ share }) => share),
            );
          },
        ),
        { numRuns: 12, seed: 20260730 },
      );
    },
  );
});

describe('shares that do not belong together', () => {
  it('are told by name', async () => {
    const [one, two, three] = await allShares(generated, 3);
    const other = await shared(demo, 2, 3);
    const half = await shared(generated, 1, 2);
    if (one === undefined || two === undefined || three === undefined) throw new Error('no share');
    expect(joined([one, three])).toEqual({ faults: [{ kind: 'missing', numbers: [2] }] });
    expect(joined([three, two, { ...two, name: 'again.json' }])).toEqual({
      faults: [
        { kind: 'doubled', number: 2, names: ['2.json', 'again.json'] },
        { kind: 'missing', numbers: [1] },
      ],
    });
    expect(joined([one, other, three])).toEqual({
      faults: [{ kind: 'foreign', name: '2.json', first: '1.json' }],
    });
    expect(joined([two, half])).toEqual({
      faults: [{ kind: 'other-count', name: '1.json', of: 2, first: '2.json' }],
    });
    expect(joinShares([one, two, three], '9.9.9')).toMatchObject({
      faults: ['1.json', '2.json', '3.json'].map((name) => ({ kind: 'other-version', name })),
    });
  });

  it('nothing else is taken for one', () => {
    for (const json of [null, [], {}, { share: { number: 1, of: 1 } }, 'text'])
      expect(shareFrom(json)).toBeUndefined();
  });
});

describe('sharing out', () => {
  const portions = fc.uniqueArray(
    fc.record({
      path: fc.string({ minLength: 1 }),
      length: fc.nat({ max: 100_000 }),
      group: fc.constantFrom('', 'a', 'b', 'c'),
    }),
    { selector: ({ path }) => path },
  );

  it('gives each part to one share, the same in any order, about as much to each', () => {
    fc.assert(
      fc.property(portions, fc.integer({ min: 1, max: 20 }), (all, of) => {
        const outs = Array.from({ length: of }, (_, i) => shareOut(all, { number: i + 1, of }));
        expect(outs.flat().toSorted()).toEqual(all.map(({ path }) => path).toSorted());
        const again = all.toReversed();
        for (const [i, out] of outs.entries())
          expect(shareOut(again, { number: i + 1, of })).toEqual(out);
        const lengths = new Map(all.map(({ path, length }) => [path, length + 1]));
        const total = [...lengths.values()].reduce((sum, one) => sum + one, 0);
        const longest = Math.max(0, ...lengths.values());
        for (const out of outs) {
          const mine = out.reduce((sum, path) => sum + (lengths.get(path) ?? 0), 0);
          expect(Math.abs(mine - total / of)).toBeLessThanOrEqual(longest + 1);
        }
      }),
    );
  });
});
