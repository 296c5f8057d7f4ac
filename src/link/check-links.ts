import { type ManualFiles, nearest } from '../source/index.ts';
import type { LinkFact } from './facts.ts';
import type { LinkedManual, LinkedProcedure } from './linked.ts';
import { targetOf } from './paths.ts';
import { allBlocks, allSteps } from './walk.ts';

/** Pictures that a browser and a printer can show. */
const pictures = /\.(svg|png|jpe?g|webp)$/i;

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
      });
    }
  }
  return facts;
}

/** Figures that are not there, are no pictures, or have no text alternative. */
export function checkFigures(one: LinkedProcedure, files: ManualFiles): readonly LinkFact[] {
  const { procedure } = one;
  const facts: LinkFact[] = [];
  const shown = [
    ...procedure.links.filter((link) => link.isImage).map((link) => ({ ...link, src: link.url })),
    ...[...allBlocks(procedure)].flatMap((block) =>
      block.type === 'figure'
        ? [{ src: block.src.text, place: block.src.place, alt: block.alt }]
        : [],
    ),
  ];
  for (const figure of shown) {
    const at = { procedure: procedure.id, place: figure.place };
    const target = targetOf(procedure.file, figure.src);
    if (target.kind !== 'file') {
      facts.push({ ...at, kind: 'link-outside', url: figure.src });
      continue;
    }
    if (!files.others.includes(target.path)) {
      facts.push({
        ...at,
        kind: 'figure-missing',
        path: target.path,
        near: nearest(target.path, files.others),
      });
    } else if (!pictures.test(target.path))
      facts.push({ ...at, kind: 'figure-unfit', path: target.path });
    if (!figure.alt?.trim()) facts.push({ ...at, kind: 'alternative-missing', path: target.path });
  }
  return facts;
}

function anchorsOf(one: LinkedProcedure): string[] {
  const steps = [...allSteps(one.procedure)].flatMap((step) =>
    step.id === undefined ? [] : [step.id.id],
  );
  return [...one.procedure.sections.map((section) => section.id), ...steps];
}
