/** How a redline can be written. */
export const redlineFormats = ['text', 'markdown', 'json', 'page'] as const;

export type RedlineFormat = (typeof redlineFormats)[number];
