import type { ContentData } from '../../schemas/procedure-content.ts';
import type { ActionData } from '../../schemas/procedure-parts.ts';

/** Parts of a procedure as one run of plain words, with the figures of the catalogue, without their hazards. */
export function contentWords(content: readonly ContentData[]): string {
  return content
    .map(wordsOf)
    .filter((words) => words !== '')
    .join(' ');
}

function wordsOf(part: ContentData): string {
  switch (part.type) {
    case 'step':
      return only(part.when?.words, joined(withFigures(part), contentWords(part.content)));
    case 'text':
      return withFigures(part);
    case 'figure':
    case 'torque':
    case 'fluid':
      return part.words;
    case 'hazard':
      return '';
    case 'perform': {
      const place = part.at === undefined ? '' : `, for ${part.at}`;
      const section = part.part === undefined ? '' : ` (${part.part})`;
      return only(part.when?.words, `Do “${part.procedure.title}”${section}${place}.`);
    }
    case 'undo':
      return only(part.when?.words, `Undo each step of “${part.section}”, the last one first.`);
    case 'only':
      return only(part.when.words, contentWords(part.content));
    case 'repeat':
      return `Repeat ${part.words}: ${contentWords(part.content)}`;
    case 'needs':
      return contentWords(part.content);
    case 'choice':
      return part.ways.map((way) => `If ${way.if}: ${contentWords(way.content)}`).join(' ');
  }
}

/** The words, then each figure that they do not say: those who read them have no margin to look at. */
function withFigures({
  words,
  actions,
}: {
  words: string;
  actions: readonly ActionData[];
}): string {
  const figures = actions.flatMap(({ item, torque, fluid, limit }) => {
    const said = [
      torque?.stages.map((stage) => stage.words).join(', then '),
      fluid?.amount?.words,
      limit?.words,
    ];
    return said.flatMap((figure) =>
      figure === undefined || words.includes(figure) ? [] : [`${item.name}: ${figure}`],
    );
  });
  const told = [...new Set(figures)].join('; ');
  return joined(words, told === '' ? '' : `(${told})`);
}

const only = (when: string | undefined, words: string): string =>
  when === undefined ? words : `Only ${when}: ${words}`;

const joined = (...parts: readonly string[]): string =>
  parts.filter((part) => part !== '').join(' ');
