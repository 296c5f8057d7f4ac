import { spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { generate } from './generate.ts';

/** What one run of the command took. */
interface Cost {
  /** Of processor time, on all threads, so that a busy machine counts no more than an idle one. */
  readonly seconds: number;
  readonly megabytes: number;
}

/** What shares and their joining take for each 1,000 procedures. */
export interface ShareCosts {
  readonly start: Cost;
  readonly inside: Cost;
  readonly outside: Cost;
  readonly joined: Cost;
}

const jobs = 46;
const shared = 4;

/**
 * Measures one share of a small manual, a half of it, and as much of one that is `times` as large: what is the same
 * in two of them falls out of the difference. `machines` is the size of the small one, 50 procedures each.
 */
export function shareCosts(times = 2, machines = 20): ShareCosts {
  const small = new OnDisk(machines);
  const large = new OnDisk(machines * times);
  const thousands = (machines * (jobs + shared)) / 1000;
  try {
    const alone = small.share(1, 1);
    const half = small.share(1, 2);
    const among = large.share(1, times);
    const outside = scaled(minus(among, alone), 1 / (times - 1) / thousands);
    // In a half are fewer procedures, and as many more are outside of it.
    const inside = plus(scaled(minus(alone, half), 2 / thousands), outside);
    const start = minus(alone, scaled(inside, thousands));
    for (let i = 2; i <= times; i += 1) large.share(i, times);
    const joined = scaled(minus(large.join(times), small.join(1)), 1 / (times - 1) / thousands);
    return { start, inside, outside, joined };
  } finally {
    small.remove();
    large.remove();
  }
}

/** The table for the guide: measured costs, and what they make of 1,000,000 procedures. */
export function costTable({ start, inside, outside, joined }: ShareCosts): string {
  const row = (name: string, { seconds, megabytes }: Cost): string =>
    `| ${name} | ${seconds.toFixed(2)} s | ${Math.round(megabytes)} MB |`;
  const thousands = 1000;
  const of = (n: number): Cost =>
    plus(start, plus(scaled(inside, thousands / n), scaled(outside, thousands)));
  return [
    '| What | Processor time | Peak memory |',
    '| --- | ---: | ---: |',
    row('a share: the start', start),
    row('for each 1,000 procedures in it', inside),
    row('for each 1,000 procedures in others', outside),
    row('`merge`: for each 1,000 procedures', joined),
    ...[50, 100, 200].map((n) => row(`computed: each of ${n} shares of 1,000,000`, of(n))),
    row('computed: `merge` of 1,000,000', scaled(joined, thousands)),
  ].join('\n');
}

class OnDisk {
  readonly #home = mkdtempSync(join(tmpdir(), 'tallybolt-shares-'));

  constructor(machines: number) {
    const { files } = generate(1, { machines, jobs, slips: machines });
    for (const { path, text } of files.texts) {
      const file = join(this.#home, 'manual', path);
      mkdirSync(dirname(file), { recursive: true });
      writeFileSync(file, text);
    }
  }

  share(number: number, of: number): Cost {
    return this.#run(`inspect manual --share ${number}/${of} > ${number}-${of}.json`);
  }

  join(of: number): Cost {
    const files = Array.from({ length: of }, (_, i) => `${i + 1}-${of}.json`);
    return this.#run(`merge ${files.join(' ')} --format json > report.json`);
  }

  remove(): void {
    rmSync(this.#home, { recursive: true });
  }

  /** Runs the command; what it took is told by a script that is loaded before it. */
  #run(words: string): Cost {
    const node = `"${process.execPath}" --import "${costPrinter}" "${main}"`;
    const { stderr } = spawnSync(`${node} ${words}`, {
      shell: true,
      cwd: this.#home,
      encoding: 'utf8',
    });
    const [, seconds, megabytes] = /cost (\S+) (\S+)\n$/.exec(stderr) ?? [];
    if (seconds === undefined || megabytes === undefined) throw new Error(stderr);
    return { seconds: Number(seconds), megabytes: Number(megabytes) };
  }
}

const main = fileURLToPath(new URL('../../src/command/main.ts', import.meta.url));
const costPrinter = `data:text/javascript,process.on('exit',()=>{const{userCPUTime:u,systemCPUTime:s,maxRSS:m}=process.resourceUsage();process.stderr.write('cost '+(u+s)/1e6+' '+m/1024+'\\n')})`;

const scaled = ({ seconds, megabytes }: Cost, by: number): Cost => ({
  seconds: seconds * by,
  megabytes: megabytes * by,
});
const plus = (a: Cost, b: Cost): Cost => ({
  seconds: a.seconds + b.seconds,
  megabytes: a.megabytes + b.megabytes,
});
const minus = (a: Cost, b: Cost): Cost => plus(a, scaled(b, -1));

if (import.meta.main) {
  const [times = '4', machines = '20'] = process.argv.slice(2);
  console.log(costTable(shareCosts(Number(times), Number(machines))));
}
