import type { BlockContent, DefinitionContent } from 'mdast';
import type { Directives } from 'mdast-util-directive';
import { tokensOf } from './directive-tokens.ts';
import type { SyntaxFact } from './facts.ts';
import { type Form, howWritten, knownDirective, nearDirective, written } from './forms.ts';
import { type BlockDirective, labelAndBody, partsOf } from './label.ts';
import type { Reading } from './reading.ts';

type Misplaced = Extract<SyntaxFact, { kind: 'directive-misplaced' }>;

export function formOf(node: Directives): Form {
  switch (node.type) {
    case 'textDirective':
      return 'text';
    case 'leafDirective':
      return 'leaf';
    case 'containerDirective':
      return 'block';
  }
}

export function tellUnknown(reading: Reading, node: Directives): void {
  const form = formOf(node);
  const near = nearDirective(node.name, form);
  reading.facts.push({
    kind: 'directive-unknown',
    place: reading.place(tokensOf(node).opening),
    name: node.name,
    form,
    ...(near === undefined ? {} : { near }),
  });
}

/** Tells a known directive that cannot stand where or as it does. `found` is its form when not given. */
export function tellMisplaced(
  reading: Reading,
  node: Directives,
  found?: string,
  expected?: string,
  outer?: Misplaced['outer'],
): void {
  const { name } = node;
  reading.facts.push({
    kind: 'directive-misplaced',
    place: reading.place(tokensOf(node).opening),
    name,
    found: found ?? written(name, formOf(node)),
    expected: expected ?? howWritten(name, knownDirective(name)?.forms ?? []),
    ...(outer === undefined ? {} : { outer }),
  });
}

/**
 * What stands for a block directive that is not understood: its label, as a paragraph, and its body. An
 * action with too many colons is an action all the same.
 */
export function insteadOfDirective(node: BlockDirective): (BlockContent | DefinitionContent)[] {
  const { name, attributes, position, data } = node;
  if (knownDirective(name)?.verb === undefined) return labelAndBody(node);
  const { label, body } = partsOf(node);
  const children = label?.words.children ?? [];
  const action = { type: 'textDirective', name, attributes, children, position, data } as const;
  return [{ type: 'paragraph', children: [action], position }, ...body];
}
