import type { Element, ElementContent } from 'hast';
import { h } from 'hastscript';
import { itemName, onlyWords, piecesAtEach } from '../derive/index.ts';
import { targetOf } from '../link/index.ts';
import type { Callout, FigureBlock } from '../syntax/index.ts';
import { calloutPicture } from './callout-picture.ts';
import { pictureAddress } from './link-address.ts';
import { prose } from './prose.ts';
import { itemAddress, type SheetContext } from './sheet-context.ts';
import type { ShownFigure } from './shown-figures.ts';

/** A picture with its caption; where it has call-outs, with their numbers and a key to them. */
export function figureMarkup(block: FigureBlock, context: SheetContext): Element {
  const shown = context.figures.get(block);
  const caption = captionOf(block, shown, context);
  const end = caption.length === 0 ? [] : [h('figcaption', caption)];
  if (shown === undefined) return h('figure', [plainPicture(block, context), ...end]);
  const { id } = shown;
  return h('figure.with-key', { id }, [
    h('div.picture', pictureWithNumbers(block, shown, context)),
    h(
      'ol.key',
      block.callouts.map((callout, i) =>
        h('li', { id: `${id}-${i + 1}` }, [
          h('span.callout', String(i + 1)),
          ' ',
          h('span', keyWords(callout, context)),
        ]),
      ),
    ),
    ...end,
  ]);
}

function captionOf(
  { blocks }: FigureBlock,
  shown: ShownFigure | undefined,
  context: SheetContext,
): ElementContent[] {
  const words = context.blocks(blocks);
  if (shown?.number === undefined) return words;
  return [h('p.figure-number', `Figure ${shown.number}`), ...words];
}

/** Without the numbers where the size of the picture is not known, as for one that is not there. */
function pictureWithNumbers(
  block: FigureBlock,
  { id, number }: ShownFigure,
  context: SheetContext,
): Element {
  const href = pictureAddress(block.src.text, context);
  const target = targetOf(context.one.procedure.file, block.src.text);
  const size = target.kind === 'file' ? context.manual.pictures.get(target.path) : undefined;
  if (href === undefined || size === undefined) return plainPicture(block, context);
  return calloutPicture(
    { href, alt: block.alt ?? '', size },
    number === undefined ? 'Figure with numbers' : `Figure ${number} with numbers`,
    block.callouts.map((callout, i) => ({
      points: callout.points,
      href: addressOf(callout, context) ?? `#${id}-${i + 1}`,
      name: nameOf(callout, context),
    })),
  );
}

function plainPicture({ src, alt = '' }: FigureBlock, context: SheetContext): Element {
  const address = pictureAddress(src.text, context);
  return address === undefined ? h('p', alt) : h('img', { src: address, alt, loading: 'lazy' });
}

/** "anvil bolt (8)": the name leads to the entry, whatever words the writer gave it. */
function keyWords(callout: Callout, context: SheetContext): (ElementContent | string)[] {
  const item = callout.item && context.one.item(callout.item);
  const words =
    callout.words === '' ? [nameOf(callout, context)] : prose(callout.phrasing, context);
  const href = addressOf(callout, context);
  const pieces = item === undefined ? 1 : piecesAtEach(item);
  const only = item?.when && onlyWords(item.when, context.manual.manual.settings.variants);
  const limits = [
    ...(pieces > 1 ? [String(pieces)] : []),
    ...(only === undefined ? [] : [only.charAt(0).toLowerCase() + only.slice(1)]),
  ];
  return [
    href === undefined ? h('span', words) : h('a.item', { href }, words),
    ...(limits.length === 0 ? [] : [` (${limits.join(', ')})`]),
  ];
}

function nameOf({ item: ref, words }: Callout, context: SheetContext): string {
  if (words !== '') return words;
  const item = ref && context.one.item(ref);
  return item === undefined ? (ref?.id ?? '') : itemName(item);
}

function addressOf({ item: ref }: Callout, context: SheetContext): string | undefined {
  const item = ref && context.one.item(ref);
  return item && itemAddress(item, context);
}
