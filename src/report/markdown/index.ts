export { folded, listed, listItem } from './lists.ts';
export { reportAsMarkdown } from './report-as-markdown.ts';
export { plain as markdownWords, wordsIn as markdownSentence } from './words-in.ts';
