import { defineCollection } from 'astro:content';
import { frame, machines, sheets } from 'tallybolt:book';
import { z } from 'astro/zod';
import { bookLoader } from '../src/astro/index.ts';
import type { MachinePage, Sheet } from '../src/render/book.ts';

export const collections = {
  sheets: defineCollection({
    loader: bookLoader('tallybolt-sheets', sheets, frame, (sheet) => sheet.bodyHtml),
    schema: z.custom<Sheet>(),
  }),
  machines: defineCollection({
    loader: bookLoader('tallybolt-machines', machines, frame, () => ''),
    schema: z.custom<MachinePage>(),
  }),
};
