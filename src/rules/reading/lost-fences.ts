import type { SyntaxFact } from '../../syntax/index.ts';
import type { Examined } from '../rule.ts';

export type Misplaced = Extract<SyntaxFact, { kind: 'directive-misplaced' }>;

/** A directive that cannot stand where or as it does. */
export interface Lost {
  readonly fact: Misplaced;
  /** The closing line that is left over because of it. */
  readonly leftOver: Misplaced | undefined;
}

/**
 * The misplaced directives in order of place. A closing line that closes no block is told with the opening line
 * before it that was lost, so that one slip is one finding; by itself only where there is none.
 */
export function lostFences(examined: Examined): readonly Lost[] {
  const open: { readonly file: string; readonly fact: Misplaced | undefined }[] = [];
  const leftOver = new Map<Misplaced, Misplaced>();
  const told: Misplaced[] = [];
  for (const fact of examined.facts(
    'directive-misplaced',
    'attribute-wrong',
    'directive-unknown',
  )) {
    const isStray = fact.kind === 'directive-misplaced' && fact.name === ':::';
    const before = isStray ? open.findLastIndex(({ file }) => file === fact.place.file) : -1;
    const [opening] = before < 0 ? [] : open.splice(before, 1);
    if (isStray && opening?.fact !== undefined) leftOver.set(opening.fact, fact);
    if (fact.kind === 'directive-misplaced' && opening === undefined) told.push(fact);
    if (!isStray && losesItsClosing(examined, fact)) {
      const own = fact.kind === 'directive-misplaced' ? fact : undefined;
      open.push({ file: fact.place.file, fact: own });
    }
  }
  return told.map((fact) => ({ fact, leftOver: leftOver.get(fact) }));
}

type Fault = Extract<
  SyntaxFact,
  { kind: 'directive-misplaced' | 'attribute-wrong' | 'directive-unknown' }
>;

/** Whether what was meant as the opening line of a block opens none, or its closing line went to another block. */
function losesItsClosing(examined: Examined, fact: Fault): boolean {
  if (fact.kind === 'directive-misplaced' && fact.outer !== undefined) return true;
  const { file, start, end } = fact.place;
  const text = examined.text(file);
  if (!text.startsWith(':::', start.offset)) return false;
  if (fact.kind === 'directive-misplaced') return fact.found.startsWith('with ');
  return /^[[{]/.test(text.slice(end.offset));
}
