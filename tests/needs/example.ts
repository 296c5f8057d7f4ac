import { expect, test } from 'vitest';
import { type StepFacts, stepFacts } from '../../src/derive/index.ts';
import { allSteps } from '../../src/link/index.ts';
import { check, told } from '../support/manual.ts';

/** An invented page of a manual. What a page is not about it leaves out. */
export interface Page {
  /** Catalogue entries as YAML. */
  readonly items?: string;
  /** Steps as Markdown. */
  readonly body: string;
  /** Further front matter. */
  readonly front?: string;
  /** Further settings of the manual. */
  readonly manual?: string;
  /** Other files of the manual by path. */
  readonly files?: Readonly<Record<string, string>>;
  /** Paths of pictures. */
  readonly pictures?: readonly string[];
}

/** What is found in a page, as `rule item`, in order of place. */
export function found({ items, body, front = '', manual = '', files = {}, pictures }: Page) {
  const page = sheet('example', body, front, items);
  const texts = { 'manual.yaml': `title: Example\n${manual}`, 'procedures/example.md': page };
  return check({ ...texts, ...files }, pictures);
}

/** The text of a procedure. */
export function sheet(id: string, body: string, front = '', items?: string): string {
  const entries = items === undefined ? '' : `items:\n${items.trim().replace(/^/gm, '  ')}\n`;
  return `---\nprocedure: ${id}\ntitle: ${id}\n${front}${entries}---\n\n${body}`;
}

/** What the margin of a page's sheet shows, step by step. */
export function stepsOf(page: Page): StepFacts[] {
  const [one] = [...found(page).linked.procedures.values()];
  if (one === undefined) throw new Error('the page cannot be read');
  return [...allSteps(one.procedure)].map((step) => stepFacts(step, one));
}

/** A page that is right, and that nothing is found in. */
export function sound(name: string, page: Page): void {
  test(`sound: ${name}`, () => expect(told(found(page).report)).toEqual([]));
}

/** A page with a fault, and all that is found in it, in any order. */
export function faulty(name: string, page: Page, findings: readonly string[]): void {
  test(`faulty: ${name}`, () => {
    expect(findings).not.toEqual([]);
    expect([...told(found(page).report)].sort()).toEqual([...findings].sort());
  });
}
