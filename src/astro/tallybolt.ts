import type { AstroIntegration } from 'astro';
import type { Book } from '../render/index.ts';
import { bookModule } from './book-module.ts';

/** Gives one finished `Book` to Astro: its pages and its content layer read it from the module `tallybolt:book`. */
export function tallybolt({ book }: { readonly book: Book }): AstroIntegration {
  return {
    name: 'tallybolt',
    hooks: {
      'astro:config:setup': ({ updateConfig }) => {
        updateConfig({ vite: { plugins: [bookModule(book)] } });
      },
    },
  };
}
