/** Sizes of paper that sheets are printed on: ISO 216 A4, ANSI/ASME Y14.1 size A. */
export const papers = ['A4', 'Letter'] as const;
export type Paper = (typeof papers)[number];
