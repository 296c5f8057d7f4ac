import type { Reference, Term, VerbEntry } from './reference.ts';

/** The reference as a page for `man`, in the man macros of roff. */
export function referenceRoff({ does, options, groups }: Reference): string {
  return `${[
    '.TH TALLYBOLT 1 "" "Tallybolt" "Tallybolt"',
    '.SH NAME',
    `tallybolt \\- ${escaped(does.slice(0, 1).toLowerCase() + does.slice(1).replace(/\.$/, ''))}`,
    '.SH SYNOPSIS',
    '.B tallybolt',
    '.I verb',
    '[\\fIoptions\\fR]',
    '.SH OPTIONS',
    ...terms([
      ...options,
      { word: '-h, --help', says: 'print the help, of a verb where one is named' },
    ]),
    ...groups.flatMap(({ heading, verbs }) => [
      `.SH ${escaped(heading).toUpperCase()}`,
      ...verbs.flatMap(verbLines),
    ]),
    '.SH EXIT STATUS',
    ...terms([
      { word: '0', says: 'done, and nothing was found' },
      { word: '1', says: 'done, and something was found: errors or warnings; steps were written' },
      { word: '2', says: 'could not run' },
    ]),
    '.SH ENVIRONMENT',
    ...terms([
      { word: 'NO_COLOR', says: 'no colours, where it is not empty' },
      { word: 'FORCE_COLOR', says: 'colours also in a pipe or a file; 0: none' },
      { word: 'TERM', says: 'dumb: no colours, and no line is written over' },
      { word: 'CI', says: 'long work does not show how far it is, where it is not empty' },
    ]),
  ].join('\n')}\n`;
}

function verbLines(verb: VerbEntry): readonly string[] {
  return [
    `.SS ${escaped(verb.name)}`,
    text(verb.does),
    '.PP',
    `.B ${escaped(verb.usage)}`,
    ...terms([...verb.arguments, ...verb.options]),
    ...verb.notes.flatMap((note) => ['.PP', text(note)]),
    '.PP',
    'Examples:',
    ...verb.examples.flatMap(({ line, does }) => [
      '.PP',
      text(does),
      '.RS 4',
      '.nf',
      text(line),
      '.fi',
      '.RE',
    ]),
    '.PP',
    'Exit codes:',
    ...terms(verb.exits),
  ];
}

const terms = (list: readonly Term[]): readonly string[] =>
  list.flatMap(({ word, says }) => ['.TP', `.B ${escaped(word)}`, text(says)]);

/** A line of text: a dot or an apostrophe at its start is no request. */
const text = (words: string): string => escaped(words).replace(/^[.']/, '\\&$&');

/** What roff would take for a sign of its own; a hyphen stays one that can be typed and searched for. */
function escaped(words: string): string {
  return words
    .replaceAll('\\', '\\e')
    .replaceAll('-', '\\-')
    .replaceAll("'", '\\(aq')
    .replaceAll('"', '\\(dq')
    .replaceAll('`', '\\(ga')
    .replaceAll('^', '\\(ha')
    .replaceAll('~', '\\(ti')
    .replace(
      /[^ -~]/g,
      (sign) => `\\[u${(sign.codePointAt(0) ?? 0).toString(16).toUpperCase().padStart(4, '0')}]`,
    );
}
