import { once } from './once.ts';

/** An object whose parts are made when they are first read, and kept. Its keys are in the order of `parts`. */
export function lazily<T extends object>(parts: { readonly [K in keyof T]-?: () => T[K] }): T {
  const entries = Object.entries<() => unknown>(parts);
  const getters = entries.map(([key, make]) => [key, { enumerable: true, get: once(make) }]);
  const made: T = Object.create(Object.prototype, Object.fromEntries(getters));
  return made;
}
