import type { DirectiveAt } from './directive-at.ts';
import { type DirectiveForm, directiveForms } from './directive-words.ts';
import type { Proposal } from './proposal.ts';

/** Names of directives that are written with so many colons. */
export function completeDirectives(
  { colons }: DirectiveAt,
  { from, to }: { readonly from: number; readonly to: number },
  text: string,
): readonly Proposal[] {
  const isBare = !/[[{]/.test(text[to] ?? '');
  return directiveForms
    .filter((form) => form.colons === Math.min(3, colons))
    .map((form) => ({
      label: form.name,
      kind: 'directive',
      more: `${form.name} ${form.does}.`,
      text: form.name,
      ...(isBare && { snippet: snippetOf(form, colons) }),
      from,
      to,
    }));
}

function snippetOf({ name, first }: DirectiveForm, colons: number): string {
  if (colons < 3) return first === undefined ? name : `${name}{${first && `${first}=`}$1}`;
  const close = ':'.repeat(colons);
  if (first === undefined) return `${name}[$1]\n$0\n${close}`;
  return `${name}{${first === 'hazard' ? 'hazard="$1" harm="$2"' : `${first}=$1`}}\n$0\n${close}`;
}
