import { diffWords } from 'diff';
import type { Element, ElementContent } from 'hast';
import { h } from 'hastscript';
import type { Change, Redline } from '../../schemas/redline.ts';
import { isRisky } from './risks.ts';
import { performersWords, placeOf, stepWords, touchesWords } from './told-place.ts';

/** Longer values, and wording, stand under the words; shorter ones in the margin. */
const widest = 64;

/**
 * A change on the page: a bar, what changed and where, how it was struck out and how it is. Where it does not stand
 * among the changes of its procedure or machine, `redline` says whose it is.
 */
export function changeEntry(change: Change, redline?: Redline): Element {
  const { before = '', after = '' } = change;
  const isLong = change.kind === 'words' || Math.max(before.length, after.length) > widest;
  const shown = isLong ? wordsDiff(before, after) : [];
  const touches = touchesWords(change);
  const performers = redline === undefined ? '' : performersWords(change, redline);
  // As panels have it.
  const shownAs = (text: string): string =>
    change.kind === 'hazard-signal' ? text.toUpperCase() : text;
  return h('li', { className: ['change', ...(isRisky(change.risk) ? ['risk'] : [])] }, [
    h('div.what', [
      h('p.head', headOf(change)),
      ...(shown.length === 0 ? [] : [h('p.text', shown)]),
      h('p.about', whereOf(change, redline !== undefined, performers)),
      ...(touches === '' ? [] : [h('p.about', `Reaches ${touches}`)]),
    ]),
    h('div.margin', isLong ? [] : valuesOf(shownAs(before), shownAs(after))),
  ]);
}

/** The sentence without the values that stand beside it. */
function headOf({ message, before, after }: Change): string {
  const [was, is] = [before ?? 'nothing', after ?? 'nothing'];
  const one = before ?? after ?? '';
  const told = [
    `: ${was} → ${is}`,
    `: ${was.toUpperCase()} → ${is.toUpperCase()}`,
    `: “${was}” → “${is}”`,
    `: “${one}”`,
    `: ${one}`,
    ` ${one}`,
  ];
  for (const tail of one === '' ? [] : told) {
    const at = message.lastIndexOf(tail);
    if (at > 0) return message.slice(0, at) + message.slice(at + tail.length);
  }
  return message;
}

function whereOf(change: Change, namesHome: boolean, performers: string): string {
  const place = placeOf(change);
  const step = stepWords(change);
  const home = namesHome ? (change.procedure ?? change.machine) : undefined;
  const words = [
    ...(home === undefined ? [] : [home]),
    ...(step === undefined ? [] : [step]),
    ...(place === undefined ? [] : [`${place.file}:${place.line}`]),
  ];
  const where = words.join(', ') + (place?.isOld === true ? ' (before)' : '');
  return [where, performers].filter(Boolean).join('; ');
}

const valuesOf = (before: string, after: string): Element[] => [
  ...(before === '' ? [] : [h('del', before)]),
  ...(after === '' ? [] : [h('ins', after)]),
];

function wordsDiff(before: string, after: string): ElementContent[] {
  if (before === '' || after === '') return valuesOf(before, after);
  return diffWords(before, after).map(({ value, added, removed }): ElementContent => {
    if (added) return h('ins', value);
    return removed ? h('del', value) : { type: 'text', value };
  });
}
