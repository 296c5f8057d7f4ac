import { compareText, type ManualFiles } from '../source/index.ts';

/** The files of a manual in order of path, so that no result depends on how they were found. */
export function sortedFiles(files: ManualFiles): ManualFiles {
  return {
    texts: files.texts.toSorted((a, b) => compareText(a.path, b.path)),
    unreadable: files.unreadable.toSorted((a, b) => compareText(a.path, b.path)),
    others: files.others.toSorted(compareText),
    pictures: (files.pictures ?? []).toSorted((a, b) => compareText(a.path, b.path)),
  };
}
