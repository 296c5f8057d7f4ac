export { bookLoader } from './book-loader.ts';
export type { Frame } from './book-module.ts';
export { bundleScript } from './bundle-script.ts';
export { bundleStyle } from './bundle-style.ts';
export {
  pageScript,
  proofScript,
  proofStyle,
  relativeLink,
  searchScripts,
  upToRoot,
} from './links.ts';
export { type LivePages, livePages } from './live-pages.ts';
export { offlineScript } from './offline-script.ts';
export {
  type Held,
  type MissingSheet,
  type ProofFinding,
  type ProofPage,
  placeText,
} from './proof-page.ts';
export { searchIndexScript, searchPageScript } from './search-scripts.ts';
export { siteConfig } from './site-config.ts';
export { tallybolt } from './tallybolt.ts';
