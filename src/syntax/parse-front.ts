import { locator, type TextFile } from '../source/index.ts';
import { readFront } from './front.ts';
import { beyondLimits } from './limits.ts';
import { parseMarkdown } from './markdown.ts';
import type { Procedure } from './model.ts';
import { isSurelyShallow } from './nesting.ts';
import { parseProcedure } from './parse-procedure.ts';

/** What stands above the steps of a procedure. */
export type Front = Pick<Procedure, 'id' | 'file' | 'front' | 'placeOf'>;

/**
 * What `parseProcedure` gives of the front matter, without reading what stands below it; undefined for the same texts
 * for which that gives no procedure.
 */
export function parseFront(file: TextFile): Front | undefined {
  const { path, text } = file;
  const end = endOfFront(text);
  if (end === undefined) return undefined;
  const source = locator(path, text);
  if (beyondLimits(source) !== undefined) return undefined;
  // Whether a tree is too deep is known only when it is there.
  if (!isSurelyShallow(text)) return parseProcedure(file).value;
  const read = readFront(source, parseMarkdown(text.slice(0, end)));
  const matter = read?.value;
  if (read === undefined || matter === undefined) return undefined;
  return { id: matter.procedure, file: path, front: matter, placeOf: read.placeOf };
}

/** Where the line ends that closes the front matter; undefined where the text does not begin with one. */
function endOfFront(text: string): number | undefined {
  const opening = /^\uFEFF?---[ \t]*(?=[\r\n])/.exec(text);
  if (opening === null) return undefined;
  const closing = /[\r\n]---[ \t]*(?=[\r\n]|$)/g;
  closing.lastIndex = opening[0].length;
  return closing.test(text) ? closing.lastIndex : undefined;
}
