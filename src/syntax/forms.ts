import type { Signal } from '../../schemas/catalogue.ts';
import { signals, type Verb, verbSchema } from '../../schemas/directives.ts';
import { nearest } from '../source/index.ts';

/** `:text[…]` in a sentence, `::leaf` on a line of its own, `:::block` around lines. */
export type Form = 'text' | 'leaf' | 'block';

export type BlockName =
  | 'step'
  | 'hazard'
  | Signal
  | 'torque'
  | 'fluid'
  | 'needs'
  | 'figure'
  | 'callout'
  | 'perform'
  | 'reverse'
  | 'waive'
  | 'when'
  | 'repeat'
  | 'if'
  | 'either'
  | 'or';

/** A known name: what it is as an action and as a block; `torque` is both. */
export interface Known {
  readonly verb: Verb | undefined;
  readonly block: BlockName | undefined;
  readonly forms: readonly Form[];
}

const blockForms: readonly (readonly [BlockName, readonly Form[]])[] = [
  ['step', ['leaf']],
  ['hazard', ['leaf']],
  ...signals.map((signal) => [signal, ['block']] as const),
  ['torque', ['leaf', 'block']],
  ['fluid', ['leaf', 'block']],
  ['needs', ['leaf', 'block']],
  ['figure', ['leaf', 'block']],
  ['callout', ['leaf']],
  ['perform', ['leaf']],
  ['reverse', ['leaf', 'block']],
  ['waive', ['leaf', 'block']],
  ['when', ['block']],
  ['repeat', ['block']],
  ['if', ['block']],
  ['either', ['block']],
  ['or', ['block']],
];

const directives = new Map<string, Known>(
  verbSchema.options.map((verb) => [verb, { verb, block: undefined, forms: ['text'] }]),
);
for (const [block, forms] of blockForms) {
  const verb = directives.get(block)?.verb;
  directives.set(block, { verb, block, forms: verb === undefined ? forms : ['text', ...forms] });
}

export function knownDirective(name: string): Known | undefined {
  return directives.get(name);
}

/** The known name that was probably meant: first among those that can be written so. */
export function nearDirective(name: string, form: Form): string | undefined {
  const fitting = [...directives].filter(([, { forms }]) => forms.includes(form));
  return (
    nearest(
      name,
      fitting.map(([known]) => known),
    ) ?? nearest(name, directives.keys())
  );
}

/** How a known directive is written: "`::perform` on a line of its own". */
export function howWritten(name: string, forms: readonly Form[]): string {
  return forms.map((form) => `${written(name, form)} ${where[form]}`).join(', or ');
}

/** The name with its colons. */
export function written(name: string, form: Form): string {
  return `${colons[form]}${name}`;
}

const colons = { text: ':', leaf: '::', block: ':::' } as const;

const where = {
  text: 'in a sentence',
  leaf: 'on a line of its own',
  block: 'before its lines and ::: after them',
} as const;
