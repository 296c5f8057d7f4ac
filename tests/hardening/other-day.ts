/** Loaded with `--import` before the command: for this process it is 400 days later. */
const ahead = 400 * 24 * 3600 * 1000;
const now = Date.now;
const later = (): number => now() + ahead;

globalThis.Date = new Proxy(Date, {
  construct: (date, given, as) =>
    Reflect.construct(date, given.length === 0 ? [later()] : given, as),
  get: (date, key) => (key === 'now' ? later : Reflect.get(date, key)),
});
