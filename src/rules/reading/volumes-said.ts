import type { Place } from '../../../schemas/finding.ts';
import type { Circuit } from '../../catalogue/index.ts';
import type { LinkedProcedure } from '../../link/index.ts';
import { canonical, findQuantities } from '../../quantity/index.ts';
import { plainWords } from './running-text.ts';
import { stepTexts } from './step-texts.ts';

/** A volume in the words of a filling that is more than the circuit holds. */
export interface TooMuchSaid {
  readonly circuit: Circuit;
  readonly written: string;
  readonly place: Place;
}

export function* fillsTooMuch(one: LinkedProcedure): Generator<TooMuchSaid> {
  for (const { text } of stepTexts(one)) {
    for (const { action, start, end } of text.stretches) {
      const circuit = action?.verb === 'fill' ? one.item(action.item) : undefined;
      if (circuit?.kind !== 'circuit' || circuit.capacity === undefined) continue;
      const { high } = canonical(circuit.capacity);
      const words = plainWords(text).slice(start, end);
      if (high === undefined) continue;
      for (const { quantity, start: from, end: to } of findQuantities(words)) {
        if (quantity?.form !== 'single' || isOfVessel(words, from, to)) continue;
        const said = canonical(quantity);
        const least = said.low?.value;
        if (said.kind !== 'volume' || least === undefined) continue;
        // Rounded figures in two units may lie half a place apart.
        const slack = Math.max(high.step, said.low?.step ?? 0) / 2;
        if (least <= high.value + slack) continue;
        const place = text.placeOf(start + from, start + to);
        yield { circuit, written: words.slice(from, to), place };
      }
    }
  }
}

/** "from a 20 L drum", "20 L can": what the vessel holds. */
const isOfVessel = (words: string, from: number, to: number): boolean =>
  /\b(?:from|with|of|per|every|a|an)\s+(?:the\s+|an?\s+)?$/i.test(words.slice(0, from)) ||
  /^[\s-]*(?:\S+\s+)?(?:cans?|canisters?|containers?|buckets?|drums?|jugs?|bottles?|barrels?|pans?|jerry|per|a minute|an hour)\b/i.test(
    words.slice(to),
  );
