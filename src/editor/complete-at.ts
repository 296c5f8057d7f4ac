import { completeAttributes } from './complete-attributes.ts';
import { completeCondition } from './complete-condition.ts';
import { completeDirectives } from './complete-directives.ts';
import { completeValue } from './complete-values.ts';
import { completeYaml } from './complete-yaml.ts';
import type { Desk } from './desk.ts';
import { directiveAt } from './directive-at.ts';
import { isInFront } from './front-at.ts';
import type { Proposal } from './proposal.ts';

/** What may be typed at an offset of a file. Works on texts that are broken. */
export function completeAt(desk: Desk, file: string, offset: number): readonly Proposal[] {
  const text = desk.textOf(file);
  if (text === undefined) return [];
  if (!file.endsWith('.md') || isInFront(text, offset)) return completeYaml(desk, file, offset);
  const directive = directiveAt(text, offset);
  if (directive === undefined) return [];
  const { at } = directive;
  switch (at.part) {
    case 'name':
      return completeDirectives(directive, at, text);
    case 'key':
      return completeAttributes(directive, at, text);
    case 'value':
      return completeValue(desk, file, directive, at, offset);
    case 'label':
      return directive.name === 'when' && directive.colons >= 3
        ? completeCondition(desk.inspection.linked.manual, at.text, at.from, offset)
        : [];
  }
}
