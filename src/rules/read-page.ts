import { type Example, readExample } from './read-example.ts';

/** The page of a rule: what it finds, why that matters in the shop, what to do, and examples. */
export interface RulePage {
  readonly what: string;
  readonly why: string;
  readonly action: string;
  readonly bad: readonly Example[];
  readonly good: readonly Example[];
}

/** Reads the Markdown of a rule's page. What is missing comes back empty. */
export function readPage(markdown: string): RulePage {
  const [intro = '', ...sections] = markdown
    .replaceAll('\r\n', '\n')
    .split(/^## (?=(?:Bad|Good)$)/m);
  const [what = '', why = '', action = ''] = intro
    .split(/\n\s*\n/)
    .map((paragraph) => paragraph.trim().replace(/\s*\n\s*/g, ' '))
    .filter((paragraph) => paragraph !== '');
  return {
    what,
    why,
    action,
    bad: examplesIn(sections, 'Bad'),
    good: examplesIn(sections, 'Good'),
  };
}

function examplesIn(sections: readonly string[], title: string): Example[] {
  return sections
    .filter((section) => section.split('\n', 1)[0]?.trim() === title)
    .flatMap((section) => [...section.matchAll(/^```md\n([\s\S]*?)^```$/gm)])
    .map(([, source = '']) => readExample(source));
}
