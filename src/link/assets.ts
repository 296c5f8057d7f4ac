import type { ManualFiles, PictureFile, PictureSize } from '../source/index.ts';

/** The files of a manual that are not text, as figures ask for them. */
export interface Assets {
  /** By path; undefined for a file of which no more is known than that it is there. */
  readonly files: ReadonlyMap<string, PictureFile | undefined>;
  /** Sizes of the pictures that may be shown, by path. */
  readonly sizes: ReadonlyMap<string, PictureSize>;
}

export function assetsOf({ others, pictures = [] }: ManualFiles): Assets {
  const known = new Map(pictures.map((picture) => [picture.path, picture]));
  return {
    files: new Map(others.map((path) => [path, known.get(path)])),
    sizes: new Map(
      pictures.flatMap((picture) =>
        picture.state === 'fit' && picture.size !== undefined
          ? [[picture.path, picture.size] as const]
          : [],
      ),
    ),
  };
}
