import type { Element } from 'hast';
import { h, s } from 'hastscript';
import { encode } from 'uqr';

/**
 * The address of a page as a QR code (ISO/IEC 18004, error correction M), for paper: whoever holds an old
 * sheet comes to the current one.
 */
export function addressCode(address: string): Element {
  const { data, size } = encode(address, { ecc: 'M', border: 4 });
  const dark = data.flatMap((row, y) =>
    runs(row).map(([x, width]) => `M${x} ${y}h${width}v1h-${width}z`),
  );
  return h('p.code', [
    s('svg', { viewBox: `0 0 ${size} ${size}`, role: 'img', ariaLabel: `QR code of ${address}` }, [
      s('rect', { width: size, height: size, fill: '#fff' }),
      s('path', { d: dark.join(''), fill: '#000', shapeRendering: 'crispEdges' }),
    ]),
    h('span', 'Is this the current revision?'),
  ]);
}

/** Dark squares side by side, as one bar each: where it starts and how long it is. Paper shows no seams in them. */
function runs(row: readonly boolean[]): [start: number, width: number][] {
  const found: [number, number][] = [];
  for (const [x, isDark] of row.entries()) {
    const last = found.at(-1);
    if (!isDark) continue;
    if (last !== undefined && last[0] + last[1] === x) last[1] += 1;
    else found.push([x, 1]);
  }
  return found;
}

/** The address of a page of the published manual. `href` is relative to the site's root. */
export function pageAddress(manual: string, href: string): string {
  return new URL(href, manual.endsWith('/') ? manual : `${manual}/`).href;
}
