import { parse } from 'csv-parse/sync';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { csv } from '../../src/render/csv.ts';

describe('CSV', () => {
  test('is as RFC 4180, section 2, has it', () => {
    expect(
      csv([
        ['aaa', 'b "bb"', 'c,c'],
        ['', 'x\r\ny', '1 x 5 L'],
      ]),
    ).toBe('aaa,"b ""bb""","c,c"\r\n,"x\r\ny",1 x 5 L\r\n');
  });

  test('makes text of what a spreadsheet would take for a formula', () => {
    const dangerous = ['=1+1', '+1', '-1', '@sum', '\tx', '\rx', '=a,b', '="x"'];
    const [row = []] = parse(csv([dangerous]));
    expect(row).toEqual(dangerous.map((text) => `'${text}`));
    expect(csv([['a=1', '1-2', 'x@y', "'"]])).toBe("a=1,1-2,x@y,'\r\n");
  });

  test('law: a reader by the RFC gets every cell back (csv-parse)', () => {
    const cell = fc.oneof(
      fc.string({ unit: 'grapheme' }),
      fc.string({ unit: fc.constantFrom('"', ',', '\r', '\n', ' ', 'ä', '×', "'", '=') }),
    );
    const table = fc
      .integer({ min: 2, max: 5 })
      .chain((width) =>
        fc.array(fc.array(cell, { minLength: width, maxLength: width }), { minLength: 1 }),
      );
    fc.assert(
      fc.property(table, (rows) => {
        const read: string[][] = parse(csv(rows), { record_delimiter: '\r\n' });
        const safe = rows.map((row) =>
          row.map((text) => (/^[=+\-@\t\r]/.test(text) ? `'${text}` : text)),
        );
        expect(read).toEqual(safe);
      }),
    );
  });
});
