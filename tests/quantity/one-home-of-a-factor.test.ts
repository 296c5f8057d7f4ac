import { readdirSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';

/** Digits that can only be a conversion factor (exact definitions and their usual rounded products). */
const factors =
  /\b(?:25\.4|304\.8|0\.3048|0\.0254|0\.4535\d*|9\.80665|4\.448\d*|1\.355\d+|0\.7375\d*|0\.1129\d*|6\.894\d*|3\.785\d*|0\.946\d+|4\.54609|1\.609\d*|13595\.1)\b/;

test('no file but the unit table holds a conversion factor', () => {
  const root = new URL('../../src/', import.meta.url);
  const sources = readdirSync(root, { recursive: true, encoding: 'utf8' })
    .filter((path) => path.endsWith('.ts'))
    .sort();
  const holders = sources.filter((path) =>
    factors.test(withoutComments(readFileSync(new URL(path, root), 'utf8'))),
  );
  expect(holders).toEqual(['quantity/unit-table.ts']);
});

function withoutComments(source: string): string {
  return source.replace(/\/\*[\s\S]*?\*\//g, '').replace(/^\s*\/\/.*$/gm, '');
}
