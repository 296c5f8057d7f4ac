/** Rules whose level no manual can change: a file that cannot be read is not checked, and that must be seen. */
export const unchangeable: ReadonlySet<string> = new Set([
  'file-unreadable',
  'yaml-broken',
  'front-matter-missing',
]);
