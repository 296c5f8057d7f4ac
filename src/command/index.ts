export { CannotRun } from './cannot-run.ts';
export { type Checked, checkFolder } from './check-folder.ts';
export { readManualFiles } from './read-manual-files.ts';
