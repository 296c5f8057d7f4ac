import type { Verb } from '../../../schemas/directives.ts';
import { code } from './lists.ts';
import type { Thing } from './thing.ts';

interface More {
  readonly count?: number;
  readonly isNew?: boolean;
  readonly to?: string;
}

/** The line to write, in backticks: `:install{item=anvil-bolt qty=4}`. */
export function directive(verb: Verb, one: Thing, more: More = {}): string {
  const qty = more.count !== undefined && more.count < one.size ? ` qty=${more.count}` : '';
  const to = more.to === undefined ? '' : ` to=${more.to}`;
  return code(`:${verb}{item=${one.id}${qty}${to}${more.isNew ? ' new' : ''}}`);
}
