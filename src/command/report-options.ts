import { Option } from 'commander';
import { listed } from './listed.ts';
import { reportFiles } from './report-file.ts';
import { reportFormats } from './report-format.ts';

/** Options of every verb that tells a report; made anew for each, since a verb may say more of its own. */

export const formatOption = () =>
  new Option('--format <format>', 'how to print').choices(reportFormats).default('text');

export const reportOption = () =>
  new Option(
    '--report <format=file>',
    'write the report into a file too: sarif=report.sarif; may be given several times',
  ).argParser(reportFiles);

export const baselineOption = () =>
  new Option('--baseline <file>', 'fail only for what this file does not list as known');

export const onlyOption = () =>
  new Option('--only <rules>', 'show and count only these rules: left-out,left-open').argParser(
    listed,
  );

export const levelOption = () =>
  new Option('--level <level>', 'leave out what is below')
    .choices(['error', 'warning', 'note'])
    .default('note');
