import type { Finding } from '../../../schemas/finding.ts';
import type { Look } from '../../rules/index.ts';

/** The files whose text a report shows for what a look has found. */
export function* filesOfLook({ found, performing, waivers }: Look): Generator<string> {
  for (const { finding } of found) yield* filesOf(finding);
  for (const { by } of performing) yield by.place.file;
  for (const { place, until } of waivers) {
    yield place.file;
    if (until !== undefined) yield until.place.file;
  }
}

function* filesOf({ file, related, fix }: Finding): Generator<string> {
  yield file;
  for (const one of related) yield one.file;
  for (const edit of fix?.edits ?? []) yield edit.file;
}
