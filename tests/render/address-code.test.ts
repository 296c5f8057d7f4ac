import type { Element } from 'hast';
import { encode } from 'uqr';
import { expect, test } from 'vitest';
import { addressCode } from '../../src/render/address-code.ts';
import { toHtml } from '../../src/render/to-html.ts';

/** The encoder is a library of its own (ISO/IEC 18004); held against it is what we draw. */
test('the bars of the code cover the dark squares, each once, and no other', () => {
  const address = 'https://manuals.example/tawny-26d/procedures/make-safe/index.html';
  const { data, size } = encode(address, { ecc: 'M', border: 4 });
  const drawn = Array.from({ length: size }, () => Array.from({ length: size }, () => 0));
  const code: Element = addressCode(address);
  const bars = [...toHtml([code]).matchAll(/M(\d+) (\d+)h(\d+)v1h-(\d+)z/g)];
  for (const [, x, y, width, back] of bars) {
    expect(back).toBe(width);
    const row = drawn[Number(y)] ?? [];
    for (let i = 0; i < Number(width); i += 1) row[Number(x) + i] = (row[Number(x) + i] ?? 0) + 1;
  }
  expect(drawn).toEqual(data.map((row) => row.map(Number)));
  expect(bars.length).toBeLessThan(data.flat().filter(Boolean).length);
});
