import type { NewEntry, Proposal, UntrackedReport } from '../../schemas/untracked.ts';
import { counted, noPaint, type Paint, printable } from '../report/index.ts';

/** The words that act without a directive, for people: where, what they say, what to write. */
export function untrackedAsText(
  { proposals, entries }: UntrackedReport,
  paint: Paint = noPaint,
): string {
  if (proposals.length === 0) return 'Every action is counted: no words act without a directive.';
  const written = proposals.filter(({ edit }) => edit !== undefined).length;
  const left = proposals.length - written;
  return [
    ...proposals.flatMap((proposal) => [...proposalAsText(proposal, paint), '']),
    ...(entries.length === 0
      ? []
      : ['Not in the catalogue yet:', ...entries.map((entry) => entryAsText(entry, paint)), '']),
    `${counted(proposals.length, 'action')} in words without a directive: ${written} can be written with --write${left > 0 ? `, ${left} ${left === 1 ? 'is' : 'are'} for you to decide` : ''}.`,
  ].join('\n');
}

function proposalAsText(
  { file, start, words, directive, ...rest }: Proposal,
  paint: Paint,
): string[] {
  const head = `${paint.strong(`${printable(file)}:${start.line}:${start.column}`)}  ${printable(words)}`;
  return [
    head,
    `    ${paint.level.note(printable(directive))}`,
    ...reasonAsText(rest).map((line) => `    ${line}`),
  ];
}

function reasonAsText({ why, candidates }: Pick<Proposal, 'why' | 'candidates'>): string[] {
  const names = candidates.map(({ id, name }) => `${id} (${printable(name)})`);
  const shown = names.slice(0, most).join(', ');
  const others = names.length > most ? ` and ${names.length - most} more` : '';
  switch (why) {
    case undefined:
      return [];
    case 'several-fit':
      return [`Several entries fit: ${shown}${others}. Write the id of the one that is meant.`];
    case 'spelled-alike':
      return [`No entry has this name. Is ${shown} meant?`];
    case 'none-fits':
      return ['No entry has this name. Add one, or write the id of the entry that is meant.'];
    case 'beside-the-work':
      return ['These words stand beside the work: make them a step of their own.'];
    case 'position':
      return ['The words do not say to which position; write it behind to=.'];
    case 'still-in':
      return [
        'Nothing before it took the thing out: see whether the words mean this entry, and write it yourself.',
      ];
    case 'pronoun':
      return ['The words do not name the thing; write its id behind item=.'];
    case 'signs':
      return ['Signs in the words mean something in Markdown: write the directive by hand.'];
  }
}

/** Of entries that may be meant so many are named. */
const most = 5;

function entryAsText({ file, section, entry, isWhole, procedure }: NewEntry, paint: Paint): string {
  const where = file.endsWith('.md') ? `items: ${section}:` : `${section}:`;
  const note = isWhole ? '' : '   (fill in and add it yourself)';
  return `    ${printable(file)}  ${where} ${paint.level.note(printable(entry))}${note}${file.endsWith('.md') ? '' : `   (${procedure} and others name it)`}`;
}
