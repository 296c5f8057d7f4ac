import type { ContentData } from '../../schemas/procedure-content.ts';
import { targetOf } from '../link/index.ts';
import type { FigureBlock } from '../syntax/index.ts';
import { itemData } from './item-data.ts';
import { plainText } from './plain-text.ts';
import type { SheetContext } from './sheet-context.ts';
import { figureHref } from './site-links.ts';

/** A figure for programs; its callouts in the order of their numbers. */
export function figureData(block: FigureBlock, context: SheetContext): ContentData {
  const target = targetOf(context.one.procedure.file, block.src.text);
  return {
    type: 'figure',
    ...(target.kind === 'file' ? { file: figureHref(target.path) } : {}),
    alternative: block.alt ?? '',
    words: plainText(context.blocks(block.blocks)),
    callouts: block.callouts.map(({ item, words }, i) => ({
      number: i + 1,
      ...(item === undefined ? {} : { item: itemData(item, context.one) }),
      ...(words === '' ? {} : { words }),
    })),
  };
}
