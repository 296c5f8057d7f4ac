import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { redlineAsText } from '../../src/redline/index.ts';
import { plain, redlineOf } from './compare.ts';

const guide = readFileSync(join(import.meta.dirname, '../../site/guide/11-redline.md'), 'utf8');
const block = (name: string): string =>
  new RegExp(`^\`\`\`${name}\\n([\\s\\S]*?)^\`\`\`$`, 'm').exec(guide)?.[1] ?? '';

const job = `---
procedure: replace-cup
title: Replace the cup leather
---

## Work

1. :remove{item=cover-bolt}.
2. :remove[Lift the top cover off]{item=cover}.
3. :install[Put the top cover on]{item=cover}.

4. :install{item=cover-bolt}.

5. :torque[Torque the cover bolts crosswise]{item=cover-bolt}.
`;

test('the guide shows what is printed', () => {
  const book = (bolt: string, procedure: string) => ({
    'manual.yaml': 'title: Hand pump\n',
    'machines/pump.yaml': `machine: pump\nname: Hand pump\nfasteners:\n${bolt}parts:\n  cover: { name: top cover }\n`,
    'procedures/replace-cup.md': procedure,
    'procedures/yearly-service.md':
      '---\nprocedure: yearly-service\ntitle: Yearly service\n---\n\n1. ::perform{procedure=replace-cup}\n',
  });
  const after = job
    .replace('\n5. :torque[Torque the cover bolts crosswise]{item=cover-bolt}.\n', '')
    .replace('Lift the top cover off', 'Take the top cover off');
  const redline = redlineOf(book(block('yaml before'), job), book(block('yaml after'), after));
  expect(plain(redlineAsText(redline))).toBe(block('text redline'));
});
