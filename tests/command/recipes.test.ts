import { spawnSync } from 'node:child_process';
import { existsSync, readdirSync, readFileSync, statSync } from 'node:fs';
import { chmod, mkdir, readFile, rm } from 'node:fs/promises';
import { createServer, type Server } from 'node:http';
import { join, posix } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { parse } from 'yaml';
import { z } from 'zod';
import { brokenManual, type Folder, makeFolder, type Ran, soundManual } from './run.ts';
import { makeShell, type Shell } from './shim.ts';

const guide = fileURLToPath(new URL('../../site/guide', import.meta.url));
const names = readdirSync(join(guide, 'recipes')).sort();
const recipe = (name: string): string => readFileSync(join(guide, 'recipes', name), 'utf8');
const slow = { timeout: 120_000 };
const hasRsync = spawnSync('rsync', ['--version']).status === 0;

let folder: Folder;
let shell: Shell;

beforeEach(async () => {
  folder = await makeFolder('tallybolt-recipes-');
  shell = await makeShell();
  await folder.write(Object.fromEntries(names.map((name) => [name, recipe(name)])));
  await folder.write(inManual(soundManual));
  await mkdir(join(folder.path, 'tmp'));
});
afterEach(async () => {
  await folder.remove();
  await shell.remove();
});

const inManual = (files: Readonly<Record<string, string>>): Record<string, string> =>
  Object.fromEntries(Object.entries(files).map(([path, text]) => [`manual/${path}`, text]));

/** Lines in the folder, as a person with an account of their own would run them. */
const sh = (lines: string, cwd = folder.path): Promise<Ran> =>
  shell.run(lines, cwd, {
    TMPDIR: join(folder.path, 'tmp'),
    GIT_CONFIG_GLOBAL: '/dev/null',
    GIT_CONFIG_NOSYSTEM: '1',
    GIT_AUTHOR_NAME: 'A Writer',
    GIT_AUTHOR_EMAIL: 'writer@manuals.example',
    GIT_COMMITTER_NAME: 'A Writer',
    GIT_COMMITTER_EMAIL: 'writer@manuals.example',
  });

test('the guide shows every recipe word for word', () => {
  const page = readFileSync(join(guide, '13-in-ci.md'), 'utf8');
  expect(names).toEqual([
    'check.sh',
    'ci-shares.yaml',
    'ci.yaml',
    'pre-commit',
    'to-folder.sh',
    'to-host.sh',
  ]);
  for (const name of names) expect(page).toContain(`\n${recipe(name)}\`\`\`\n`);
});

describe('check.sh', slow, () => {
  test('is quiet about success, and keeps three reports', async () => {
    const { code, err } = await sh('sh check.sh');
    expect({ code, err }).toEqual({ code: 0, err: 'manual balances.\n' });
    for (const name of ['report.sarif', 'report.xml', 'report.md'])
      expect(statSync(join(folder.path, 'reports', name)).size).toBeGreaterThan(0);
  });

  test('ends with 1 and the findings of a manual that does not balance', async () => {
    await folder.write(inManual(brokenManual));
    const { code, out, err } = await sh('sh check.sh manual kept');
    expect(code).toBe(1);
    expect(out).toContain('left-out');
    expect(err).toContain('manual does not balance: see above, or the files in kept.');
    expect(await readFile(join(folder.path, 'kept/report.sarif'), 'utf8')).toContain('left-out');
  });

  test('ends with 2 where there is no manual', async () => {
    const { code, err } = await sh('sh check.sh manuel');
    expect(code).toBe(2);
    expect(err).toMatch(/Did you mean .*\/manual\?\nmanuel was not checked: see above\.\n$/);
  });
});

describe('pre-commit', slow, () => {
  const sheet = 'manual/procedures/oil-hinge.md';
  const commit = 'git commit -q -m change';
  const heads = async (): Promise<number> =>
    Number((await sh('git rev-list --count --all')).out.trim());

  beforeEach(async () => {
    await sh('git init -q . && cp pre-commit .git/hooks/ && printf "tmp\\n" > .gitignore');
    await chmod(join(folder.path, '.git/hooks/pre-commit'), 0o755);
    const { code, err } = await sh(`git add . && ${commit}`);
    expect([code, err]).toEqual([0, expect.stringContaining('everything balances')]);
  });

  test('stops what is staged with errors, says what to do, and leaves nothing behind', async () => {
    await folder.write(inManual(brokenManual));
    const { code, err } = await sh(`git add . && ${commit}`);
    expect(code).toBe(1);
    expect(err).toContain('procedures/oil-hinge.md:12:');
    expect(err).toMatch(
      /Not committed: what is staged has the errors above\..*\n.*--no-verify\n$/s,
    );
    expect(await heads()).toBe(1);
    expect(readdirSync(join(folder.path, 'tmp'))).toEqual([]);
  });

  test('is not fooled by a file that was mended and not staged', async () => {
    await folder.write(inManual(brokenManual));
    await sh('git add .');
    await folder.write(inManual(soundManual));
    expect((await sh(commit)).code).toBe(1);
  });

  test('lets pass what is staged sound, whatever lies in the folder', async () => {
    await folder.write({
      [sheet]: soundManual['procedures/oil-hinge.md'].replace('Push', 'Slide'),
    });
    await sh('git add .');
    await folder.write(inManual(brokenManual));
    await folder.write({ 'manual/procedures/not yet.md': 'nothing yet' });
    expect((await sh(commit)).code).toBe(0);
    expect(await heads()).toBe(2);
  });

  test('does not check a commit that touches nothing of the manual', async () => {
    await folder.write({ ...inManual(brokenManual), 'notes.txt': 'buy pins\n' });
    const { code, err } = await sh(`git add notes.txt && ${commit}`);
    expect({ code, err }).toEqual({ code: 0, err: '' });
  });

  test('says so where the manual cannot be checked', async () => {
    const { code, err } = await sh(`git rm -q manual/manual.yaml && ${commit}`);
    expect(code).toBe(1);
    expect(err).toContain('There is no manual.yaml');
    expect(err).toContain('Not committed: the manual could not be checked, for the reason above.');
  });

  test('works in a second working tree, and with odd names', async () => {
    await sh('git worktree add -q tree');
    await folder.write({
      'tree/manual/procedures/a “b” c.md': soundManual['procedures/oil-hinge.md'].replace(
        'procedure: oil-hinge',
        'procedure: oil-again',
      ),
    });
    const { code, err } = await sh(`git add . && ${commit}`, join(folder.path, 'tree'));
    expect([code, err]).toEqual([0, expect.stringContaining('2 procedures')]);
  });
});

describe('ci.yaml', slow, () => {
  const job = z
    .object({
      jobs: z.object({
        check: z.object({
          steps: z.array(z.object({ name: z.string().optional(), run: z.string().optional() })),
        }),
      }),
    })
    .parse(parse(recipe('ci.yaml')));
  const lines = job.jobs.check.steps.flatMap(({ run }) => (run === undefined ? [] : [run]));

  /** As a CI does: a fresh clone, the lines one after the other, the end at the first that fails. */
  async function runJob(): Promise<readonly (number | null)[]> {
    await sh('git init -q . && git add . && git commit -q -m all && git clone -q . clone');
    const codes: (number | null)[] = [];
    for (const line of lines) {
      const { code } = await sh(line, join(folder.path, 'clone'));
      codes.push(code);
      if (code !== 0) break;
    }
    return codes;
  }
  const made = (path: string): boolean => existsSync(join(folder.path, 'clone', path));

  test('checks and publishes a sound manual', async () => {
    expect(await runJob()).toEqual([0, 0, 0]);
    expect(made('reports/report.sarif') && made('published/index.html')).toBe(true);
  });

  test('publishes nothing that does not balance, and has the reports', async () => {
    await folder.write(inManual(brokenManual));
    expect(await runJob()).toEqual([0, 1]);
    expect(made('reports/report.md')).toBe(true);
    expect(made('published')).toBe(false);
  });
});

describe('ci-shares.yaml', slow, () => {
  const steps = z.array(z.object({ name: z.string().optional(), run: z.string().optional() }));
  const { env, jobs } = z
    .object({
      env: z.object({ SHARES: z.number() }),
      jobs: z.object({
        share: z.object({
          strategy: z.object({ matrix: z.object({ share: z.array(z.number()) }) }),
          env: z.object({ SHARE: z.string().regex(/^\$\{\{ matrix\.share \}\}$/) }),
          steps,
        }),
        join: z.object({ needs: z.literal('share'), steps }),
      }),
    })
    .parse(parse(recipe('ci-shares.yaml')));
  const linesOf = (job: { readonly steps: z.infer<typeof steps> }): readonly string[] =>
    job.steps.flatMap(({ run }) => (run === undefined ? [] : [run]));
  const numbers = jobs.share.strategy.matrix.share;

  /** The jobs of the matrix one after the other, each in a clone of its own, then the one that joins. */
  async function runJobs(): Promise<Ran> {
    await sh('git init -q . && git add . && git commit -q -m all && mkdir parts');
    for (const number of [...numbers].reverse()) {
      const clone = `job-${number}`;
      await sh(`git clone -q . ${clone}`);
      const env = `export SHARES=${numbers.length} SHARE=${number}`;
      for (const line of linesOf(jobs.share)) {
        const { code, err } = await sh(`${env}\n${line}`, join(folder.path, clone));
        expect({ code, err }).toMatchObject({ code: 0 });
      }
      await sh(`cp ${clone}/shares/* parts/`);
    }
    await sh('git clone -q . join && mkdir join/shares && cp parts/* join/shares/');
    let last: Ran = { code: null, out: '', err: '' };
    for (const line of linesOf(jobs.join)) {
      last = await sh(line, join(folder.path, 'join'));
      if (last.code !== 0) break;
    }
    return last;
  }

  test('has a job for each share', () => {
    expect(numbers).toEqual(Array.from({ length: env.SHARES }, (_, i) => i + 1));
  });

  test('tells what a check of the whole tells, and has its reports', async () => {
    await folder.write(inManual(brokenManual));
    const { code, out } = await runJobs();
    const whole = await sh('npx --no -- tallybolt inspect manual --report sarif=whole.sarif');
    expect({ code, out }).toEqual({ code: 1, out: whole.out });
    expect(await readFile(join(folder.path, 'join/reports/report.sarif'), 'utf8')).toBe(
      await readFile(join(folder.path, 'whole.sarif'), 'utf8'),
    );
  });
});

describe('to-folder.sh', slow, () => {
  test('gives a folder of which every link leads to a file, and the same in one file', async () => {
    const { code } = await sh(
      'sh to-folder.sh manual workshop && mkdir apart && tar -xzf workshop.tar.gz -C apart',
    );
    expect(code).toBe(0);
    await rm(join(folder.path, 'workshop'), { recursive: true });
    const pages = await pagesFrom(async (path) =>
      readFile(join(folder.path, 'apart/workshop', path), 'utf8').catch(() => undefined),
    );
    expect(pages.missing).toEqual([]);
    expect(pages.found).toContain('procedures/oil-hinge/index.html');
  });
});

describe.runIf(hasRsync)('to-host.sh', slow, () => {
  let server: Server | undefined;
  afterEach(() => {
    server?.close();
    server = undefined;
  });

  test('fills a web folder of which every link works below any path; what is gone goes', async () => {
    await folder.write({ 'www/manuals/door/old.html': 'old' });
    const { code, err } = await sh('sh to-host.sh manual www/manuals/door/');
    expect({ code, err }).toEqual({ code: 0, err: '' });
    expect(existsSync(join(folder.path, 'www/manuals/door/old.html'))).toBe(false);
    expect(readdirSync(folder.path)).not.toContain('published');
    const address = await serve(join(folder.path, 'www'));
    const pages = await pagesFrom(async (path) => {
      const answer = await fetch(`${address}/manuals/door/${path}`);
      return answer.ok ? answer.text() : undefined;
    });
    expect(pages.missing).toEqual([]);
    expect(pages.found).toContain('procedures/oil-hinge/index.html');
  });

  test('leaves the host alone where the manual does not balance', async () => {
    await folder.write({ ...inManual(brokenManual), 'www/index.html': 'old' });
    expect((await sh('sh to-host.sh manual www/')).code).toBe(1);
    expect(readdirSync(join(folder.path, 'www'))).toEqual(['index.html']);
  });

  /** A server that serves files and knows nothing else. */
  function serve(root: string): Promise<string> {
    return new Promise((done) => {
      const one = createServer((request, answer) => {
        readFile(join(root, decodeURIComponent(request.url ?? ''))).then(
          (bytes) => answer.end(bytes),
          () => answer.writeHead(404).end(),
        );
      }).listen(0, '127.0.0.1', () => {
        const at = one.address();
        done(`http://127.0.0.1:${typeof at === 'object' && at !== null ? at.port : 0}`);
      });
      server = one;
    });
  }
});

/** All that index.html leads to, over any number of links; paths from the root of the site. */
async function pagesFrom(
  read: (path: string) => Promise<string | undefined>,
): Promise<{ readonly found: readonly string[]; readonly missing: readonly string[] }> {
  const known = new Set(['index.html']);
  const missing: string[] = [];
  for (const path of known) {
    const text = await read(path);
    if (text === undefined) missing.push(path);
    else if (path.endsWith('.html')) for (const link of linksIn(text, path)) known.add(link);
  }
  return { found: [...known], missing };
}

function linksIn(html: string, page: string): readonly string[] {
  return [...html.matchAll(/<[a-z][^>]*?\s(?:href|src)="([^"#?]+)/g)].flatMap(([, link = '']) =>
    /^[a-z]+:/.test(link) ? [] : [posix.join(posix.dirname(page), decodeURIComponent(link))],
  );
}
