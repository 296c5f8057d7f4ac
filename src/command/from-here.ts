import { isAbsolute, relative, sep } from 'node:path';

/** How the working folder leads to the manual, `/` at its end; nothing where it stands elsewhere. */
export function fromHere(folder: string): string {
  const way = relative(process.cwd(), folder);
  const isBelow = way !== '' && way !== '..' && !way.startsWith(`..${sep}`) && !isAbsolute(way);
  return isBelow ? `${way.replaceAll(sep, '/')}/` : '';
}
