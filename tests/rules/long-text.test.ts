import { expect, it } from 'vitest';
import { inspect } from '../../src/report/index.ts';
import { rules } from '../../src/rules/index.ts';
import { wholeOf } from './whole.ts';

const texts: readonly (readonly [name: string, text: string])[] = [
  ['one long sentence', 'remove the bolt and '.repeat(20_000)],
  ['many short sentences', 'Remove it. '.repeat(20_000)],
  ['many actions in a sentence', ':torque[to 24 N·m]{item=x} and '.repeat(2_000)],
  ['quotation marks', '" '.repeat(100_000)],
  ['adverbs', 'slowly '.repeat(30_000)],
  ['vague words', 'tighten securely '.repeat(10_000)],
];

it.for(texts)('rules take a few seconds at most over %s', ([, text]) => {
  const body = `---\nprocedure: a\ntitle: A\n---\n\n1. ${text}\n`;
  const files = {
    texts: [
      { path: 'manual.yaml', text: 'title: T\n' },
      { path: 'procedures/a.md', text: body },
    ],
    unreadable: [],
    others: [],
  };
  const { linked } = inspect(files, 'test');
  const examined = wholeOf(linked, files);
  const begun = performance.now();
  for (const rule of rules) expect([...rule.check(examined)].length).toBeGreaterThanOrEqual(0);
  expect(performance.now() - begun).toBeLessThan(5_000);
});
