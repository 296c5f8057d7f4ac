export { type CountedManual, countedManual } from './counted-manual.ts';
export { untrackedAsText } from './untracked-as-text.ts';
export { untrackedReport } from './untracked-report.ts';
