import type { Reference, Term, VerbEntry } from './reference.ts';

/** The reference as a chapter of the guide. */
export function referenceMarkdown({ does, options, groups }: Reference): string {
  return `${[
    '## The command',
    `${does} Every verb also has \`--help\`.`,
    termList(options),
    ...groups.flatMap(({ heading, verbs }) => [`### ${heading}`, ...verbs.flatMap(verbBlocks)]),
  ].join('\n\n')}\n`;
}

function verbBlocks(verb: VerbEntry): readonly string[] {
  const terms = termList([...verb.arguments, ...verb.options]);
  const examples = verb.examples.map(({ line, does }) => `# ${does}\n${line}`).join('\n');
  return [
    `#### \`${verb.name}\``,
    verb.does,
    fenced(verb.usage, 'text'),
    ...(terms === '' ? [] : [terms]),
    ...verb.notes.map(plain),
    fenced(examples, 'sh'),
    `Exit codes: ${verb.exits.map(({ word, says }) => `**${word}** ${plain(says)}`).join('; ')}.`,
  ];
}

const termList = (terms: readonly Term[]): string =>
  terms.map(({ word, says }) => `* \`${word}\`: ${plain(says)}`).join('\n');

const fenced = (text: string, language: string): string => `\`\`\`${language}\n${text}\n\`\`\``;

/** Signs of Markdown that stand in plain words. */
const plain = (text: string): string => text.replace(/(?<!`)[<*_[](?!`)/g, '\\$&');
