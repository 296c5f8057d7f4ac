import type { Root } from 'mdast';
import remarkDirective from 'remark-directive';
import remarkFrontmatter from 'remark-frontmatter';
import remarkGfm from 'remark-gfm';
import remarkParse from 'remark-parse';
import { unified } from 'unified';
import { inspect } from '../../src/report/index.ts';
import type { ManualFiles } from '../../src/source/index.ts';
import { manualFrom } from '../manuals/manual-from.ts';
import { generate } from './generate.ts';
import { differences } from './planted.ts';
import { measureVariants } from './variants.ts';

// What the whole check costs, as a multiple of only parsing the same Markdown in the same run.
const rounds = 7;
const plain = unified().use(remarkParse).freeze();
const extended = unified()
  .use(remarkParse)
  .use(remarkDirective)
  .use(remarkGfm)
  .use(remarkFrontmatter)
  .freeze();

const generated = generate(1, { machines: 10, jobs: 26, slips: 48 });
let failed = false;
measure('demo manual', await manualFrom('demo'));
measure('300 generated procedures', generated.files);
measureVariants();
tellDifferences();
process.exitCode = failed ? 1 : 0;

function measure(name: string, files: ManualFiles): void {
  const texts = files.texts.filter(({ path }) => path.endsWith('.md')).map(({ text }) => text);
  const size = texts.reduce((sum, text) => sum + Buffer.byteLength(text), 0);
  const parse = (parser: { parse(text: string): Root }) => () => {
    for (const text of texts) parser.parse(text);
  };
  const [base, wide, whole] = medians([parse(plain), parse(extended), () => inspect(files, '0')]);
  console.log(
    `${name}: ${texts.length} procedures, ${(size / 1024).toFixed(0)} KB, median of ${rounds}`,
  );
  row('remark-parse', base, base);
  row('remark-parse + directive, gfm, frontmatter', wide, base);
  row('inspect', whole, base);
}

function row(what: string, time: number, base: number): void {
  const ratio = (time / base).toFixed(2);
  console.log(`  ${what.padEnd(44)}${time.toFixed(0).padStart(6)} ms${ratio.padStart(8)} x`);
}

/** Milliseconds of each work, taken in turn so that a slow moment of the machine meets all of them alike. */
function medians(works: readonly [() => void, () => void, () => void]): [number, number, number] {
  for (const work of works) work();
  const times = works.map((): number[] => []);
  for (let round = 0; round < rounds; round += 1) {
    for (const [i, work] of works.entries()) {
      const start = performance.now();
      work();
      times[i]?.push(performance.now() - start);
    }
  }
  const [first, second, third] = times.map(median);
  return [first ?? Number.NaN, second ?? Number.NaN, third ?? Number.NaN];
}

function median(times: readonly number[]): number {
  return times.toSorted((a, b) => a - b)[Math.floor(times.length / 2)] ?? Number.NaN;
}

function tellDifferences(): void {
  const { missed, more } = differences(
    generated.planted,
    inspect(generated.files, '0').report.findings,
  );
  const found = generated.planted.length - missed.length;
  console.log(
    `slips: ${generated.planted.length} planted, ${found} found, ${more.length} findings beside them`,
  );
  for (const one of missed) console.log(`  missed: ${one}`);
  for (const one of more) console.log(`  beside: ${one}`);
  failed = missed.length + more.length > 0;
}
