import { isYesNo } from '../applicability/index.ts';
import type { ManualModel } from '../catalogue/index.ts';
import type { Proposal } from './proposal.ts';

/** What may be typed at an offset of a condition that begins at `start`: variants, or values of the one before `=`. */
export function completeCondition(
  { space, settings }: ManualModel,
  text: string,
  start: number,
  offset: number,
): readonly Proposal[] {
  const before = text.slice(0, offset - start);
  const word = /[^\s&|!=(),]*$/.exec(before)?.[0] ?? '';
  const from = offset - word.length;
  const rest = /^[^\s&|!=(),"']*/.exec(text.slice(offset - start))?.[0] ?? '';
  const to = offset + rest.length;
  const tested = /([^\s&|!=(),]+)\s*(?:!?=\s*|(?:not\s+)?in\s*\([^)]*)$/.exec(
    before.slice(0, before.length - word.length),
  )?.[1];
  const attribute = tested === undefined ? undefined : space.attribute(tested);
  if (attribute !== undefined) {
    return attribute.values.map((value, rank) => ({
      label: value,
      kind: 'value',
      detail: `a value of ${attribute.id}`,
      text: value,
      from,
      to,
      rank,
    }));
  }
  return space.attributes.map((one) => {
    const setting = settings.variants[one.id];
    const name = Array.isArray(setting) ? undefined : setting?.name;
    const values = one.values.join(', ');
    return {
      label: one.id,
      kind: 'value',
      detail: name === undefined ? values : `${name}: ${values}`,
      text: isYesNo(one) ? one.id : `${one.id} = `,
      from,
      to,
    };
  });
}
