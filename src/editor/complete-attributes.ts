import { z } from 'zod';
import type { DirectiveAt } from './directive-at.ts';
import { directiveForm } from './directive-words.ts';
import type { Proposal } from './proposal.ts';

/** Attributes that a directive takes and does not have yet; those that it must have come first. */
export function completeAttributes(
  directive: DirectiveAt,
  { from, to }: { readonly from: number; readonly to: number },
  text: string,
): readonly Proposal[] {
  const form = directiveForm(directive.name, directive.colons);
  if (form === undefined) return [];
  const hasValue = text[to] === '=';
  return Object.entries(form.attributes.shape)
    .filter(([name]) => !directive.given.has(name))
    .map(([name, field]) => {
      const isNeeded = !z.safeParse(field, undefined).success;
      const isFlag = z.safeParse(field, '').success;
      const written = name === 'id' ? '#' : isFlag || hasValue ? name : `${name}=`;
      const needsQuotes = ['when', 'time', 'wait', 'value', 'amount', 'angle', 'hazard', 'harm'];
      const more = 'description' in field ? String(field.description ?? '') : '';
      return {
        label: name,
        kind: 'attribute',
        ...(isNeeded && { detail: 'needed' }),
        ...(more !== '' && { more }),
        text: written,
        ...(written.endsWith('=') && needsQuotes.includes(name) && { snippet: `${name}="$1"` }),
        from,
        to,
        rank: isNeeded ? 0 : 1,
      } satisfies Proposal;
    });
}
