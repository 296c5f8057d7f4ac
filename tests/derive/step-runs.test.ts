import { describe, expect, test } from 'vitest';
import { type StepRun, stepRuns } from '../../src/derive/index.ts';
import { linkedManual, procedureIn } from '../render/linked-manual.ts';

const head = `---
procedure: job
title: Job
items:
  fasteners:
    left-bolt: { name: left bolt, holds: left-cover }
    right-bolt: { name: right bolt, holds: right-cover }
  parts:
    left-cover: { name: left cover }
    right-cover: { name: right cover }
---

`;

function runs(steps: string): string[] | undefined {
  const manual = linkedManual({ 'manual.yaml': 'title: T\n', 'procedures/job.md': head + steps });
  const words = ({ first, last, after }: StepRun) => `${first}-${last} after ${after.join()}`;
  return stepRuns(procedureIn(manual, 'job'))?.map(words);
}

describe('the order of steps', () => {
  test('has two branches where nothing ties two sides together', () => {
    expect(
      runs(`1. :remove{item=left-bolt}
2. :remove{item=left-cover}
   ::step{wait="5 min"}
3. :remove{item=right-bolt}
4. :remove{item=right-cover}
5. Look at the shaft.
`),
    ).toEqual(['1-2 after ', '3-4 after ', '5-5 after 0,1']);
  });

  test('is joined where a step says what it needs', () => {
    expect(
      runs(`1. :remove{item=left-bolt}
   ::step{#undone}
2. :remove{item=left-cover}
3. :remove{item=right-bolt}
   ::step{needs=undone}
4. Look at the shaft.
`),
    ).toEqual(['1-1 after ', '2-2 after 0', '3-3 after 0', '4-4 after 1,2']);
  });

  test('is not told where every step follows the one before it, or the text says nothing of order', () => {
    expect(runs('1. Look.\n   ::step{wait="5 min"}\n2. Look again.\n')).toBeUndefined();
    expect(runs('1. :remove{item=left-bolt}\n2. :remove{item=right-bolt}\n')).toBeUndefined();
  });
});
