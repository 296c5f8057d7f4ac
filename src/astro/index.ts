export { bookLoader } from './book-loader.ts';
export type { Frame } from './book-module.ts';
export { relativeLink, upToRoot } from './links.ts';
export { siteConfig } from './site-config.ts';
export { tallybolt } from './tallybolt.ts';
