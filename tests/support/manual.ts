import type { Report } from '../../schemas/report.ts';
import type { Item } from '../../src/catalogue/index.ts';
import { type Inspection, inspect } from '../../src/report/index.ts';
import type { ManualFiles } from '../../src/source/index.ts';

const plainManual = 'title: Test manual\n';

/** Files of a manual from their texts by path. `manual.yaml` is supplied where there is none. */
export function filesOf(
  texts: Readonly<Record<string, string>>,
  others: readonly string[] = [],
): ManualFiles {
  const all = { 'manual.yaml': plainManual, ...texts };
  return {
    texts: Object.entries(all).map(([path, text]) => ({ path, text })),
    unreadable: [],
    others,
  };
}

export function check(
  texts: Readonly<Record<string, string>>,
  others: readonly string[] = [],
): Inspection {
  return inspect(filesOf(texts, others), '0.0.0');
}

/** A one-page manual: entries as YAML, steps as Markdown. */
export function onePage(items: string, body: string, front = ''): string {
  const indented = items
    .trim()
    .split('\n')
    .map((line) => `  ${line}`)
    .join('\n');
  return `---\nprocedure: example\ntitle: Example\n${front}items:\n${indented}\n---\n\n${body}`;
}

/** Findings of a one-page manual as `rule item`, in order. */
export function found(items: string, body: string, front = ''): readonly string[] {
  const { report } = check({ 'procedures/example.md': onePage(items, body, front) });
  return told(report);
}

export function told(report: Report): readonly string[] {
  return report.findings.map(({ rule, item }) => (item === undefined ? rule : `${rule} ${item}`));
}

/** Catalogue entries from YAML. */
export function itemsOf(items: string): ReadonlyMap<string, Item> {
  const { linked } = check({ 'procedures/example.md': onePage(items, 'Nothing to do.\n') });
  const [procedure] = linked.procedures.values();
  if (procedure === undefined) throw new Error('the example cannot be read');
  return procedure.catalogue.items;
}
