import type { YAMLError } from 'yaml';
import type { Span } from './yaml-node.ts';

/** A fault of the writing, as offsets in the whole file. A fatal one makes what follows it unreliable. */
export interface YamlFault extends Span {
  readonly reason: string;
  readonly isFatal: boolean;
}

/** Errors of the YAML library in our words. One slip often breaks a line in several ways; the first says enough. */
export function syntaxFaults(
  errors: readonly YAMLError[],
  source: string,
  start: number,
  openQuote: number | undefined,
): YamlFault[] {
  const faults: YamlFault[] = [];
  let line: number | undefined;
  for (const error of [...errors].sort((a, b) => a.pos[0] - b.pos[0])) {
    const [from, to] = spanOf(error, source, openQuote);
    const begin = from === 0 ? -1 : source.lastIndexOf('\n', from - 1);
    if (begin === line || faults.at(-1)?.start === start + (openQuote ?? -1)) continue;
    line = begin;
    const reason = reasonOf(error, source);
    faults.push({ start: start + from, end: start + to, reason, isFatal: true });
  }
  return faults;
}

function spanOf(
  error: YAMLError,
  source: string,
  openQuote: number | undefined,
): readonly [number, number] {
  const [from, to] = error.pos;
  if (isOpenQuote(error) && openQuote !== undefined) return [openQuote, openQuote + 1];
  if (error.code === 'BLOCK_AS_IMPLICIT_KEY') {
    return [from, from + source.slice(from).search(/\s*(\r?\n|$)/)];
  }
  return [from, Math.max(from + 1, to)];
}

function isOpenQuote({ code, message }: YAMLError): boolean {
  return code === 'MISSING_CHAR' && /closing ['"]quote/.test(message);
}

/** Tags change how YAML is read in other programs; here they have no meaning. */
export function tagFaults(
  warnings: readonly YAMLError[],
  source: string,
  start: number,
): YamlFault[] {
  return warnings
    .filter(({ code }) => code === 'TAG_RESOLVE_FAILED')
    .map(({ pos: [from, to] }) => ({
      start: start + from,
      end: start + to,
      reason: `the tag ${source.slice(from, to)} has no meaning here; leave it out`,
      isFatal: false,
    }));
}

export const tabInIndent = 'a tab in the indentation; use spaces';

function reasonOf(error: YAMLError, source: string): string {
  const here = source[error.pos[0]] ?? '';
  switch (error.code) {
    case 'TAB_AS_INDENT':
      return tabInIndent;
    case 'BAD_INDENT':
      return error.message.startsWith('Flow')
        ? 'a bracket above is not closed'
        : 'the indentation does not line up with the lines above it';
    case 'BLOCK_AS_IMPLICIT_KEY':
      return 'a second colon or a list on the line of a key; put the value in quotes, or on a line of its own';
    case 'MULTILINE_IMPLICIT_KEY':
      return 'a key goes on over the end of its line; is a colon missing, or the space after it?';
    case 'KEY_OVER_1024_CHARS':
      return 'a key longer than 1024 characters; is a colon or a quote missing?';
    case 'BLOCK_IN_FLOW':
      return 'lines of keys or dashes inside brackets; close the bracket first';
    case 'MISSING_CHAR':
      return missing(error.message);
    case 'UNEXPECTED_TOKEN':
      return here.trim() === '' ? 'something here does not belong' : `${here} does not belong here`;
    case 'BAD_SCALAR_START':
      return `a value cannot start with ${here}; put it in quotes`;
    case 'BAD_DQ_ESCAPE':
      return 'a backslash that means nothing; write two, or use single quotes';
    case 'BAD_ALIAS':
    case 'ALIAS_PROPS':
      return 'a * or & with no usable name; put the value in quotes if it is meant as text';
    case 'MULTIPLE_ANCHORS':
    case 'MULTIPLE_TAGS':
    case 'BAD_PROP_ORDER':
      return 'marks with & or ! that do not fit together';
    case 'BAD_DIRECTIVE':
      return 'a line that starts with %; put the value in quotes if it is meant as text';
    case 'TAG_RESOLVE_FAILED':
    case 'BAD_COLLECTION_TYPE':
      return 'a mark with ! that does not fit its value; leave it out';
    case 'MULTIPLE_DOCS':
      return 'a second document begins here, and a file holds one';
    case 'DUPLICATE_KEY':
      return 'the key stands twice';
    case 'RESOURCE_EXHAUSTION':
      return 'nested too deep';
    case 'NON_STRING_KEY':
      return 'a key must be one plain word, such as torque or anvil-bolt';
    case 'IMPOSSIBLE':
      return 'this cannot be read';
    default:
      return error.code satisfies never;
  }
}

/** The library has one code for all that is missing, and tells which in its words. */
function missing(message: string): string {
  if (message.startsWith('Implicit map keys')) return 'a key without a colon and a value';
  if (/closing ['"]quote/.test(message)) return 'a quote that is not closed';
  if (message.includes('must end with a')) return 'a bracket above is not closed';
  if (message.startsWith('Missing directives-end')) {
    return 'a line above starts with %; put the value in quotes if it is meant as text';
  }
  if (message.startsWith('Missing , ')) return 'a comma is missing between two values in brackets';
  if (message.startsWith('Comments'))
    return 'a # needs a space before it; put the value in quotes if it is part of it';
  if (message.startsWith('Missing space after :')) return 'a space is missing after the colon';
  if (message.startsWith('Sequence item')) return 'an element of a list without its dash';
  return 'something is missing before this';
}
