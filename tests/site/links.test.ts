import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { relativeLink, upToRoot } from '../../src/astro/links.ts';

const segment = fc.stringMatching(/^[a-z][a-z0-9-]{0,8}$/);
const folder = fc
  .array(segment, { maxLength: 4 })
  .map((parts) => parts.map((part) => `${part}/`).join(''));

describe('links between pages', () => {
  test('name the file, so that a folder opened from disk works', () => {
    expect(relativeLink('/procedures/make-safe/', 'machines/press/#lid')).toBe(
      '../../machines/press/index.html#lid',
    );
    expect(relativeLink('/', 'torque-chart/index.html')).toBe('./torque-chart/index.html');
    expect(upToRoot('/')).toBe('./');
  });

  test('to a place on the same page are its fragment alone', () => {
    expect(relativeLink('/torque-chart/', 'torque-chart/index.html#m8')).toBe('#m8');
  });

  test('resolve to their target by the rules of URLs (WHATWG URL Standard, as Node has it)', () => {
    fc.assert(
      fc.property(folder, folder, fc.option(segment), (from, to, anchor) => {
        const href = anchor === null ? `${to}index.html` : `${to}index.html#${anchor}`;
        const page = new URL(`file:///site/${from}index.html`);
        expect(new URL(relativeLink(`/${from}`, href), page).href).toBe(`file:///site/${href}`);
      }),
    );
  });
});
