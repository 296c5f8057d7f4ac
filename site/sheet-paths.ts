import { getCollection } from 'astro:content';
import type { GetStaticPaths } from 'astro';

/** A path for each sheet, for the files that lie beside it. */
export const sheetPaths = (async () =>
  (await getCollection('sheets')).map(({ id, data }) => ({
    params: { sheet: id },
    props: { sheet: data },
  }))) satisfies GetStaticPaths;
