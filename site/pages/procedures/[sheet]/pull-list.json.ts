import type { APIRoute } from 'astro';
import type { Sheet } from '../../../../src/render/book.ts';
import { sheetPaths } from '../../../sheet-paths.ts';

/** The pull list of each sheet, beside it. */
export const getStaticPaths = sheetPaths;

export const GET: APIRoute<{ readonly sheet: Sheet }> = ({ props: { sheet } }) =>
  new Response(sheet.pullFiles.json.content);
