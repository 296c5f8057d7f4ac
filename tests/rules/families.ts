/** The folders of rules. */
export const families = ['form', 'links', 'balance', 'order', 'safety', 'values', 'words'] as const;
export type Family = (typeof families)[number];
