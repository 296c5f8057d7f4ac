import { nearest } from '../source/index.ts';
import type { Section } from '../syntax/index.ts';
import type { LinkFact } from './facts.ts';
import type { LinkedManual, LinkedProcedure } from './linked.ts';
import { targetOf } from './paths.ts';
import { allSteps } from './walk.ts';

/** Links to files that are not procedures of the manual, to sections that they do not have, and out of the folder. */
export function checkLinks(one: LinkedProcedure, manual: LinkedManual): readonly LinkFact[] {
  const { procedure } = one;
  const byFile = new Map([...manual.procedures.values()].map((p) => [p.procedure.file, p]));
  const facts: LinkFact[] = [];
  for (const link of procedure.links) {
    if (link.isImage) continue;
    const at = { procedure: procedure.id, place: link.place };
    const target = targetOf(procedure.file, link.url);
    if (target.kind === 'outside') facts.push({ ...at, kind: 'link-outside', url: link.url });
    if (target.kind !== 'file') continue;
    const found = byFile.get(target.path);
    if (found === undefined) {
      facts.push({
        ...at,
        kind: 'link-broken',
        url: link.url,
        target: target.path,
        near: nearest(target.path, [...byFile.keys()]),
      });
      continue;
    }
    if (target.anchor === undefined) continue;
    const anchors = anchorsOf(found);
    if (!anchors.includes(target.anchor)) {
      facts.push({
        ...at,
        kind: 'link-broken',
        url: link.url,
        target: `#${target.anchor}`,
        near: nearest(target.anchor, anchors),
        known: anchorsOf(found, ({ headingPlace }) => headingPlace !== undefined),
      });
    }
  }
  return facts;
}

function anchorsOf(
  one: LinkedProcedure,
  isListed: (section: Section) => boolean = () => true,
): string[] {
  const steps = [...allSteps(one.procedure)].flatMap((step) =>
    step.id === undefined ? [] : [step.id.id],
  );
  return [...one.procedure.sections.filter(isListed).map((section) => section.id), ...steps];
}
