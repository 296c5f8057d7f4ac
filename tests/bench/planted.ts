import type { Finding } from '../../schemas/finding.ts';
import type { Job } from './generated-job.ts';

/** What must be found for one slip: the rule, and the line by its number. */
export interface Planted {
  readonly rule: string;
  readonly file: string;
  readonly line: number;
}

export type Slip = (job: Job) => { readonly text: string; readonly found: Planted };

/** Slips that can be made in a job of any kind. Each makes exactly one finding. */
export const slipsInAny: readonly Slip[] = [
  (job) =>
    slip(
      job,
      'hazard-missing',
      /::hazard\{.*\}\n\n\s+/,
      '',
      /:remove\[Lift the (third|inner) .*\n.*people=2.*\n\d+\. :remove\[Peel/,
    ),
  (job) =>
    slip(
      job,
      'left-drained',
      /\d+\. ::perform\{procedure=\S+-fill\}\n/,
      '',
      /::perform\{procedure=\S+-drain\}/,
    ),
  (job) => slip(job, 'aid-left-in', /\d+\. :withdraw.*\n/, '', /:fit\[Set the stand/),
  (job) => slip(job, 'unit-unknown', /(value="max \S+) mm"/, '$1 mmm"', /mmm/),
  (job) => slip(job, 'broken-link', /-drain\.md\)/, '-drian.md)', /-drian\.md/),
  (job) =>
    slip(
      job,
      'out-twice',
      /(\d+\. :remove\[Take out the \d+ bolts of the outer .*\n.*\n)/,
      '$1$1',
      /(?<=bolts of the outer [\s\S]*)\d+\. :remove\[Take out the \d+ bolts of the outer/,
    ),
];

/** All slips, in the order in which they are planted: these take steps that put back. */
export const slips: readonly Slip[] = [
  // The steps that put the outer bolts back are gone.
  (job) =>
    slip(
      job,
      'left-out',
      /\d+\. :install\[Put in the \d+ bolts of the outer [\s\S]*?\n {3,4}:::\n(?=\d)/,
      '',
      /:remove\[Take out the \d+ bolts of the outer/,
    ),
  // On machines with a guard only.
  (job) =>
    slip(
      job,
      'left-out',
      /\d+\. :install\[Put in the 2 screws of the guard .*\n.*\n/,
      '',
      /:remove\[Undo the 2 screws of the guard/,
    ),
  (job) =>
    slip(
      job,
      'left-open',
      /\d+\. :connect\[Plug the lamp cable .*\n.*\n/,
      '',
      /:disconnect\[Unplug the lamp cable/,
    ),
  (job) =>
    slip(
      job,
      'never-torqued',
      /\d+\. :torque\[Torque the \d+ bolts of the outer [\s\S]*?\n {3,4}:::\n(?=\d)/,
      '',
      /:install\[Put in the \d+ bolts of the outer/,
    ),
  (job) =>
    slip(
      job,
      'torque-disagrees',
      /(bolts of the second [^\]]*)\]\{(item=\S+) with/,
      '$1]{$2 value="24 N·m" with',
      /value="24 N·m"/,
    ),
  (job) => slip(job, 'old-part-back', / new\}/, '}', /:install\[Lay a new gasket/),
  (job) =>
    slip(
      job,
      'count-mismatch',
      /Put in the \d+ (bolts of the outer [^\]]*\]\{item=\S+)\}/,
      'Put in the 20 $1 qty=20}',
      /qty=20/,
    ),
  (job) =>
    slip(
      job,
      'untracked-action',
      /(\d+\. )Wipe the joint faces clean\./,
      '$1Remove the bracket.',
      /Remove the bracket/,
    ),
  ...slipsInAny,
];

/** What was planted and not found, and what was found and not planted, as `rule file:line`. */
export function differences(
  planted: readonly Planted[],
  findings: readonly Finding[],
): { readonly missed: readonly string[]; readonly more: readonly string[] } {
  const wanted = planted.map(({ rule, file, line }) => `${rule} ${file}:${line}`);
  const open = new Set(wanted);
  const more = findings
    .map(({ rule, file, start }) => `${rule} ${file}:${start.line}`)
    // Each is wanted once.
    .filter((one) => !open.delete(one));
  return { missed: [...open], more };
}

function slip(job: Job, rule: string, from: RegExp, to: string, at: RegExp): ReturnType<Slip> {
  const text = job.text.replace(from, to);
  if (text === job.text) throw new Error(`${job.id} has nothing for the slip of ${rule}`);
  const index = text.search(at);
  if (index < 0) throw new Error(`${job.id} has no line for the finding of ${rule}`);
  return { text, found: { rule, file: job.file, line: text.slice(0, index).split('\n').length } };
}
