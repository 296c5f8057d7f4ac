import type { Book, BookFrame, MachinePage, PageLink } from '../render/index.ts';

/** The part of the Book that is no collection: what pages need beside their own entry. */
export type Frame = BookFrame;

const name = 'tallybolt:book';
const resolved = `\0${name}`;

/**
 * A Vite plugin that serves the Book as the module `tallybolt:book`. One export each, so that
 * a page which imports the frame does not carry every sheet of the manual with it.
 */
export function bookModule(book: Book) {
  const { sheets, machines, ...frame } = book;
  return {
    name: 'tallybolt-book',
    resolveId: (id: string) => (id === name ? resolved : undefined),
    load: (id: string) =>
      id === resolved
        ? [
            constant('frame', frame),
            constant('sheets', sheets),
            constant('machines', machines),
            constant('machineLinks', machines.map(linkTo)),
          ].join('\n')
        : undefined,
  };
}

const linkTo = ({ href, name }: MachinePage): PageLink => ({ href, text: name });

function constant(binding: string, value: object): string {
  return `export const ${binding} = /* @__PURE__ */ JSON.parse(${JSON.stringify(JSON.stringify(value))});`;
}
