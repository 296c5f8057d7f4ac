import { nearest } from '../source/index.ts';
import type { LinkFact } from './facts.ts';
import type { LinkedManual, LinkedProcedure } from './linked.ts';
import type { Outline } from './outline.ts';
import { targetOf } from './paths.ts';

/** Links to files that are not procedures of the manual, to sections that they do not have, and out of the folder. */
export function checkLinks(
  { procedure }: LinkedProcedure,
  { outlines }: LinkedManual,
): readonly LinkFact[] {
  const facts: LinkFact[] = [];
  for (const link of procedure.links) {
    if (link.isImage) continue;
    const at = { procedure: procedure.id, place: link.place };
    const target = targetOf(procedure.file, link.url);
    if (target.kind === 'outside') facts.push({ ...at, kind: 'link-outside', url: link.url });
    if (target.kind !== 'file') continue;
    const found = outlines.byFile.get(target.path);
    if (found === undefined) {
      facts.push({
        ...at,
        kind: 'link-broken',
        url: link.url,
        target: target.path,
        near: nearest(target.path, [...outlines.byFile.keys()]),
      });
      continue;
    }
    if (target.anchor === undefined) continue;
    const anchors = found.anchors.map(({ id }) => id);
    if (!anchors.includes(target.anchor)) {
      facts.push({
        ...at,
        kind: 'link-broken',
        url: link.url,
        target: `#${target.anchor}`,
        near: nearest(target.anchor, anchors),
        known: listedIn(found),
      });
    }
  }
  return facts;
}

const listedIn = ({ anchors }: Outline): string[] =>
  anchors.flatMap(({ id, isListed }) => (isListed ? [id] : []));
