export type { Edit, Finding, Fix, Level, Place, Point, Related } from '../../schemas/finding.ts';
export { type Report, reportSchema, type Waived } from '../../schemas/report.ts';
export { applyEdits, reportAsMarkdown, reportAsText, summaryAsText } from '../report/index.ts';
export type {
  ManualFiles,
  PictureFile,
  PictureSize,
  TextFile,
  UnreadableFile,
} from '../source/index.ts';
export type { GivenFiles } from './given-files.ts';
export { type InspectOptions, inspect } from './inspect-files.ts';
