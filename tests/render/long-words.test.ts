import fc from 'fast-check';
import { h } from 'hastscript';
import { expect, test } from 'vitest';
import { breakLongWords, breakLongWordsIn } from '../../src/render/long-words.ts';
import { toHtml } from '../../src/render/to-html.ts';

test('a word of more than 28 letters can be broken every 12, a shorter one cannot', () => {
  expect(breakLongWordsIn('x'.repeat(28))).toBe('x'.repeat(28));
  expect(breakLongWordsIn(`a ${'x'.repeat(29)} b`)).toBe(
    `a ${'x'.repeat(12)}\u200b${'x'.repeat(12)}\u200b${'x'.repeat(5)} b`,
  );
  expect(toHtml([h('td', 'y'.repeat(30))])).toBe(
    `<td>${'y'.repeat(12)}<wbr>${'y'.repeat(12)}<wbr>${'y'.repeat(6)}</td>`,
  );
});

test('other scripts and pictures are left as they are', () => {
  const chinese = '断开蓄电池负极电缆'.repeat(5);
  expect(breakLongWordsIn(chinese)).toBe(chinese);
  const picture = h('svg', [h('text', 'z'.repeat(40))]);
  expect(breakLongWords([picture])).toEqual([picture]);
});

test('no letter is lost, and no accent is parted from its letter', () => {
  const letter = fc.constantFrom('a', 'ü', 'e\u0301', '1', '-', ' ', '字', '👷');
  fc.assert(
    fc.property(fc.array(letter, { maxLength: 120 }), (letters) => {
      const text = letters.join('');
      const broken = breakLongWordsIn(text);
      expect(broken.replaceAll('\u200b', '')).toBe(text);
      expect(broken).not.toMatch(/\u200b\u0301/);
    }),
  );
});
