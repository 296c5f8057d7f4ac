import type { Element, ElementContent } from 'hast';
import { h, s } from 'hastscript';
import type { Signal } from '../../schemas/catalogue.ts';
import { type HazardWords, hazardWords, valuesInText } from '../derive/index.ts';
import type { HazardPanel } from '../syntax/index.ts';
import { onlyFor } from './only-for.ts';
import type { SheetContext } from './sheet-context.ts';
import { shownWhen } from './shown-when.ts';

/**
 * A safety message in three parts: what can hurt, what it does, how to avoid it (ANSI Z535.6). The alert
 * triangle stands only where people can be hurt, so never with NOTICE.
 */
export function hazardPanel(panel: HazardPanel, context: SheetContext): Element {
  const words = hazardWords(panel, context.one);
  const id = context.freshId('hazard');
  const sentence = (name: string, text: string): Element[] =>
    text === '' ? [] : [h('p', { className: [name] }, ended(valuesInText(text, context.policy)))];
  const when = shownWhen(context.presence.hazard(panel));
  const named = { className: ['hazard', words.signal], role: 'note', ariaLabelledBy: [id] };
  return h('aside', { ...named, ...when }, [
    h('p.signal', { id }, [...triangle(words.signal), words.signal.toUpperCase()]),
    h('div.message', [
      ...onlyFor(panel.when, context),
      ...sentence('what', words.hazard),
      ...sentence('harm', words.harm),
      h('div.avoid', avoidance(words, context)),
    ]),
  ]);
}

/** How to avoid the hazard: the panel's own words, else those of the catalogue. */
export function avoidance(words: HazardWords, context: SheetContext): ElementContent[] {
  if (words.blocks.length > 0) return context.blocks(words.blocks);
  return words.avoid === '' ? [] : [h('p', ended(valuesInText(words.avoid, context.policy)))];
}

function triangle(signal: Signal): Element[] {
  if (signal === 'notice') return [];
  return [
    s(
      'svg',
      { className: ['alert'], viewBox: '0 0 24 22', width: 24, height: 22, ariaHidden: 'true' },
      [
        s('path', { d: 'M12 1 23 21H1Z', className: ['alert-ground'] }),
        s('path', { d: 'M11 8h2l-.4 7h-1.2ZM11 16.5h2v2h-2Z', className: ['alert-mark'] }),
      ],
    ),
  ];
}

const ended = (text: string): string =>
  /[.!?]$/.test(text.trim()) ? text.trim() : `${text.trim()}.`;
