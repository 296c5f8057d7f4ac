import type { Place } from '../../schemas/finding.ts';
import type { Catalogue } from '../catalogue/index.ts';
import { nearest } from '../source/index.ts';
import type { FigureBlock } from '../syntax/index.ts';
import type { Assets } from './assets.ts';
import type { LinkFact, PictureFact } from './facts.ts';
import type { LinkedProcedure } from './linked.ts';
import { targetOf } from './paths.ts';
import { allBlocks } from './walk.ts';

/** Pictures that a browser and a printer can show. */
const pictures = /\.(svg|png|jpe?g|webp)$/i;

/** Pictures that are not there or cannot be shown, or have no text alternative; items called out twice in one. */
export function checkFigures(one: LinkedProcedure, assets: Assets): readonly LinkFact[] {
  const { procedure } = one;
  const figures = [...allBlocks(procedure)].filter((block) => block.type === 'figure');
  const shown = [
    ...procedure.links
      .filter((link) => link.isImage)
      .map(({ url, place, alt }) => ({ src: url, place, alt, callouts: 0 })),
    ...figures.map(({ src, alt, callouts }) => ({
      src: src.text,
      place: src.place,
      alt,
      callouts: callouts.length,
    })),
  ];
  return [
    ...shown.flatMap(({ src, place, alt, callouts }): readonly LinkFact[] => {
      const at = { procedure: procedure.id, place };
      const target = targetOf(procedure.file, src);
      const faults = check(src, procedure.file, assets, callouts > 0);
      const facts: LinkFact[] = faults.map((fault) => ({ ...at, ...fault }));
      if (target.kind === 'file' && !alt?.trim())
        facts.push({ ...at, kind: 'alternative-missing', path: target.path });
      return facts;
    }),
    ...figures.flatMap((figure) => calledTwice(figure, procedure.id)),
  ];
}

/** Pictures that entries of a machine name and that are not there or cannot be shown. */
export function checkEntryFigures({ items }: Catalogue, assets: Assets): readonly LinkFact[] {
  return [...items.values()].flatMap((item) => {
    if (item.kind === 'hazard' || item.figure === undefined) return [];
    const place = item.placeOf('figure');
    return check(item.figure, place.file, assets, false).map((fact) => ({ place, ...fact }));
  });
}

type Without<F> = F extends PictureFact ? Omit<F, 'procedure' | 'place'> : never;
type Fault = Without<PictureFact>;

function check(src: string, from: string, assets: Assets, isMeasured: boolean): Fault[] {
  const target = targetOf(from, src);
  if (target.kind !== 'file') return [{ kind: 'link-outside', url: src }];
  const { path } = target;
  if (!assets.files.has(path)) {
    return [{ kind: 'figure-missing', path, near: nearest(path, [...assets.files.keys()]) }];
  }
  if (!pictures.test(path)) return [{ kind: 'figure-unfit', path }];
  const picture = assets.files.get(path);
  if (picture === undefined) return [];
  if (picture.state !== 'fit') return [{ kind: 'figure-not-shown', path, picture }];
  return isMeasured && picture.size === undefined ? [{ kind: 'figure-sizeless', path }] : [];
}

function calledTwice({ callouts }: FigureBlock, procedure: string): LinkFact[] {
  const first = new Map<string, Place>();
  return callouts.flatMap(({ item }) => {
    const known = item && first.get(item.id);
    if (item === undefined) return [];
    if (known === undefined) first.set(item.id, item.place);
    return known === undefined
      ? []
      : [{ kind: 'callout-twice', procedure, place: item.place, item: item.id, first: known }];
  });
}
