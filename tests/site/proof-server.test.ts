import { request } from 'node:http';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { listen } from '../../src/command/proof/listen.ts';
import { makeProofBench, type ProofBench } from './proof-bench.ts';

const path = 'procedures/cutting/replace-anvil.md';
let bench: ProofBench;
let text: string;

beforeAll(async () => {
  bench = await makeProofBench();
  text = await bench.read(path);
});
afterAll(async () => {
  await bench.clear();
});

interface Answer {
  readonly status: number;
  readonly headers: Readonly<Record<string, string | readonly string[] | undefined>>;
  readonly text: string;
}

/** A request as a program would send it, with a path that nothing tidies. */
function ask(
  asked: string,
  {
    method = 'GET',
    headers = {},
    body = '',
  }: { method?: string; headers?: Record<string, string>; body?: string } = {},
): Promise<Answer> {
  return new Promise((resolve, reject) => {
    const sent = request(
      { host: '127.0.0.1', port: bench.proof.port, path: asked, method, headers },
      (answer) => {
        let words = '';
        answer.setEncoding('utf8');
        answer.on('data', (part) => {
          words += part;
        });
        answer.on('end', () =>
          resolve({ status: answer.statusCode ?? 0, headers: answer.headers, text: words }),
        );
      },
    );
    sent.on('error', reject);
    sent.end(body);
  });
}

const tokenIn = (html: string): string => /data-token="([^"]+)"/.exec(html)?.[1] ?? '';

describe('the server of the proof', () => {
  test('shows every kind of page of the site', async () => {
    for (const page of [
      '/',
      '/index.html',
      '/charts/',
      '/guide/',
      '/guide/program/',
      '/rules/balance/',
      '/findings/',
      '/search/',
      '/procedures/replace-anvil/index.html',
      '/machines/brush-chipper/',
    ]) {
      const { status, headers, text: html } = await ask(page);
      expect(status, page).toBe(200);
      expect(headers['content-type'], page).toContain('text/html');
      expect(html, page).toMatch(/<main class="paper"[\s\S]*proof\.js/);
    }
  });

  test('hands out what belongs to the pages, and no other file of the folder', async () => {
    const figure = /(?:src|href)="\.\.\/\.\.\/(figures\/[^"]+)"/.exec(
      (await ask('/procedures/drain-coolant/')).text,
    )?.[1];
    expect(figure).toBeDefined();
    for (const file of [
      `/${figure}`,
      '/procedures/replace-anvil/pull-list.csv',
      '/procedures/replace-anvil/procedure.json',
      '/assets/site.css',
      '/assets/proof.js',
      '/assets/search-index.js',
    ])
      expect((await ask(file)).status, file).toBe(200);
    for (const file of [
      '/manual.yaml',
      `/${path}`,
      '/../manual/manual.yaml',
      '/..%2f..%2fetc/passwd',
      '/assets/../manual.yaml',
      '/figures/..%2fmanual.yaml',
      '/%00',
      '/%zz',
      '/procedures/',
    ])
      expect((await ask(file)).status, file).toBeGreaterThanOrEqual(400);
  });

  /* A name of the outside may be made to lead to this machine (DNS rebinding); its pages name it as the host. */
  test('answers only where it is asked by its own name', async () => {
    for (const host of [
      'manual.example',
      'localhost.example:80',
      `127.0.0.1:${bench.proof.port + 1}`,
    ]) {
      const { status, text: words } = await ask('/', { headers: { host } });
      expect(status, host).toBe(421);
      expect(words).not.toContain('chipper');
    }
    expect((await ask('/', { headers: { host: `localhost:${bench.proof.port}` } })).status).toBe(
      200,
    );
  });

  test('lets no script run but its own, and no other page show it', async () => {
    const { headers } = await ask('/');
    const policy = String(headers['content-security-policy']);
    expect(policy).toContain("default-src 'none'");
    expect(policy).toContain("script-src 'self'");
    expect(policy).toContain("frame-ancestors 'none'");
    expect(policy).not.toContain('unsafe');
    expect(headers['x-content-type-options']).toBe('nosniff');
  });

  test('opens only places that the report of now names, for its own pages', async () => {
    await bench.write(path, text.replace(/^(\d+)\. :remove/m, '$1. :remuve[now]{item=x}. :remove'));
    const { text: html } = await ask('/procedures/replace-anvil/');
    const place = /data-place="([^"]+)"/.exec(html)?.[1] ?? '';
    const token = tokenIn(html);
    const open = async (body: string, headers: Record<string, string>, method = 'POST') =>
      (await ask('/proof/open', { method, headers, body })).status;
    const mine = { 'x-tallybolt-proof': token };
    expect(await open(place, {})).toBe(403);
    expect(await open(place, { 'x-tallybolt-proof': `${token.slice(1)}x` })).toBe(403);
    expect(await open('', mine, 'GET')).toBe(403);
    expect(await open('manual.yaml:1:1', mine)).toBe(404);
    expect(await open('/etc/passwd:1:1', mine)).toBe(404);
    expect(await bench.opened()).toEqual([]);
    expect(await open(place, mine)).toBe(200);
    expect(await bench.opened()).toHaveLength(1);
    await bench.write(path, text);
    expect(await open(place, mine)).toBe(404);
  });

  test('takes the next port where one is taken', async () => {
    const next = await listen(bench.proof.port, () => undefined);
    expect(next.port).toBeGreaterThan(bench.proof.port);
    await new Promise((resolve) => next.server.close(resolve));
  });

  test('lives through a procedure that is typed letter by letter', async () => {
    const step = Math.ceil(text.length / 24);
    for (let end = 1; end < text.length; end += step) {
      await bench.write(path, text.slice(0, end));
      for (const page of ['/procedures/replace-anvil/', '/findings/'])
        expect((await ask(page)).status, `${page} after ${end} letters`).toBe(200);
    }
    await bench.write(path, text);
    expect((await ask('/procedures/replace-anvil/')).text).toContain('everything balances');
    expect(bench.faults).toEqual([]);
  });

  test('lives through a machine and a manual.yaml that are typed letter by letter', async () => {
    for (const file of ['machines/brush-chipper.yaml', 'manual.yaml']) {
      const whole = await bench.read(file);
      for (let end = 0; end < whole.length; end += Math.ceil(whole.length / 8)) {
        await bench.write(file, whole.slice(0, end));
        for (const page of [
          '/',
          '/procedures/replace-anvil/',
          '/machines/brush-chipper/',
          '/torque-chart/',
        ])
          expect([200, 404], `${page} after ${end} letters of ${file}`).toContain(
            (await ask(page)).status,
          );
      }
      await bench.write(file, whole);
    }
    expect((await ask('/')).text).toContain('everything balances');
    expect(bench.faults).toEqual([]);
  });
});
