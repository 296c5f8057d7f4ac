export { bookLoader } from './book-loader.ts';
export type { Frame } from './book-module.ts';
export { relativeLink, searchScripts, upToRoot } from './links.ts';
export { offlineScript } from './offline-script.ts';
export { siteConfig } from './site-config.ts';
export { tallybolt } from './tallybolt.ts';
