import { expect, test } from 'vitest';
import { elementsOf, withClass } from './html-tree.ts';
import { bookOf, sheetIn } from './linked-manual.ts';

const oilHinge = (revision: string): string => `---
procedure: oil-hinge
title: Oil the hinge
revision: ${revision}
history:
  - { revision: 1, date: 2031-03-02, change: First issue. }
  - { revision: 2, date: 2031-09-01, change: Cleaning added. }
---

1. Wipe the hinge.
   ::step{changed=2}
2. Oil the hinge.
   ::step{changed=1}
`;

const marked = (revision: string): string[] => {
  const { bodyHtml } = sheetIn(
    bookOf({ 'procedures/oil-hinge.md': oilHinge(revision) }),
    'oil-hinge',
  );
  return withClass(elementsOf(bodyHtml), 'changed').map(({ text }) => text);
};

test('a bar and words mark the steps that are new in the revision of the sheet, and no others', () => {
  expect(marked('2')).toEqual([expect.stringContaining('Changed in revision 2')]);
  expect(marked('2').join()).toContain('Wipe the hinge');
  expect(marked('1').join()).toContain('Oil the hinge');
  expect(marked('3')).toEqual([]);
});
