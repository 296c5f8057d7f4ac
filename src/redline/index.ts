export { makeRedline, type Revision } from './make-redline.ts';
export { readRevision } from './read-revision.ts';
export { redlineAsMarkdown } from './redline-markdown.ts';
export { redlineAsPage } from './redline-page.ts';
export { redlineAsText } from './redline-text.ts';
