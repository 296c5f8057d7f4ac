import { AstroError } from 'astro/errors';

/**
 * An error of a manual or of options, as Astro prints it: what is wrong, and what to do. It has no stack trace, since
 * no line of a program is at fault.
 */
export function notTheCode(message: string, advice?: string): AstroError {
  const error = new AstroError(message, advice);
  error.stack = '';
  return error;
}
