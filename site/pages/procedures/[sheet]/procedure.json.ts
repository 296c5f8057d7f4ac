import type { APIRoute } from 'astro';
import type { Sheet } from '../../../../src/render/book.ts';
import { sheetPaths } from '../../../sheet-paths.ts';

/** Each procedure for programs, beside its sheet. */
export const getStaticPaths = sheetPaths;

export const GET: APIRoute<{ readonly sheet: Sheet }> = ({ props: { sheet } }) =>
  new Response(sheet.dataFile.content);
