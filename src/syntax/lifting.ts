import type { Action } from './model.ts';

/** Whether an action moves a part bodily, out or in: then its mass counts. */
export function isLifting({ verb }: Action): boolean {
  return lifting.has(verb);
}

const lifting: ReadonlySet<Action['verb']> = new Set([
  'remove',
  'install',
  'replace',
  'set-aside',
  'return',
]);
