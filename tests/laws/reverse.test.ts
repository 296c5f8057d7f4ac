import fc from 'fast-check';
import { expect, test } from 'vitest';
import { keepLedger } from '../../src/ledger/index.ts';
import { expandReverses } from '../../src/reverse/index.ts';
import { linkedFrom } from './manual-from.ts';
import { orderlyRemoval, orderlyWork } from './removals.ts';

test.each([
  ['things taken away one after the other', orderlyRemoval, 300],
  ['any work, with branches and rounds', orderlyWork, 200],
])(
  'a removal followed by its reverse balances: %s',
  (_, removal, numRuns) => {
    fc.assert(
      fc.property(removal, ({ texts, text }) => {
        const job = `${text}\n\n## Reassembly\n\n::reverse{of=removal}\n`;
        const { value } = expandReverses(linkedFrom({ ...texts, 'procedures/job.md': job }));
        expect(keepLedger(value)).toEqual([]);
      }),
      { numRuns },
    );
  },
  180_000,
);
