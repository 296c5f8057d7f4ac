import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { readPage, rules } from '../../src/rules/index.ts';
import type { Fact } from '../../src/rules/rule.ts';
import { families } from './families.ts';
import { linkedManual } from './linked-manual.ts';
import { idsIn, pages, rulesFolder } from './rule-pages.ts';
import { wholeOf } from './whole.ts';

describe('rules and their pages', () => {
  it.for(families)('every rule of %s has a page, and every page a rule', (family) => {
    expect(idsIn(family, '.md')).toEqual(idsIn(family, '.ts'));
  });

  it.for(families)('the index lists the rules of %s, each under the id of its file', (family) => {
    const listed = rules.filter((rule) => rule.family === family).map((rule) => rule.id);
    expect(listed.toSorted()).toEqual(idsIn(family, '.ts'));
    for (const id of idsIn(family, '.ts')) {
      expect(readFileSync(join(rulesFolder, family, `${id}.ts`), 'utf8')).toContain(`id: '${id}'`);
    }
  });

  it('gives no id twice', () => {
    expect(new Set(rules.map(({ id }) => id)).size).toBe(rules.length);
  });

  it.for(pages)('$id says what, why and what to do, with a bad and a good example', (page) => {
    const intro = page.markdown.split(/^## /m)[0] ?? '';
    expect(intro.trim().split(/\n\s*\n/)).toHaveLength(3);
    expect([page.what, page.why, page.action]).not.toContain('');
    expect(page.bad.length).toBeGreaterThan(0);
    expect(page.good.length).toBeGreaterThan(0);
    for (const example of page.bad) expect(example.marks.length).toBeGreaterThan(0);
    const fences = page.markdown.match(/^```md$/gm)?.length;
    expect(page.bad.length + page.good.length).toBe(fences);
  });
});

describe('readPage', () => {
  it('reads a page whose parts are missing as empty', () => {
    expect(readPage('')).toEqual({ what: '', why: '', action: '', bad: [], good: [] });
  });

  it('takes marks out of an example and puts a manual beside it', () => {
    const page = readPage(
      'a\n\nb\n\nc\n\n## Bad\n\n```md\n=== procedures/x.md\nab cd\n   ^^ left-out: gone\n```\n',
    );
    expect(page.bad[0]?.files).toEqual([
      { path: 'manual.yaml', text: 'title: Example manual\n', unreadable: undefined },
      { path: 'procedures/x.md', text: 'ab cd\n', unreadable: undefined },
    ]);
    expect(page.bad[0]?.marks).toEqual([
      { file: 'procedures/x.md', line: 1, column: 4, width: 2, rule: 'left-out', message: 'gone' },
    ]);
  });
});

describe('facts', () => {
  it('of every kind are asked for by some rule, so that nothing found goes unsaid', () => {
    const asked = new Set<string>();
    const { linked, files } = linkedManual();
    const examined = wholeOf(linked, files);
    const listening = {
      ...examined,
      facts: <K extends Fact['kind']>(...kinds: readonly K[]) => {
        for (const kind of kinds) asked.add(kind);
        return examined.facts(...kinds);
      },
    };
    for (const rule of rules)
      for (const _ of rule.check(listening)) expect(rule.id).toBe('empty-manual');
    expect([...asked].toSorted()).toEqual(Object.keys(everyKind).toSorted());
  });
});

/** The compiler sees to it that this names every kind of fact. */
const everyKind: Record<Fact['kind'], true> = {
  'already-done': true,
  'aid-in-way': true,
  'alternative-missing': true,
  'attribute-wrong': true,
  'base-unfit': true,
  blocked: true,
  'capacity-zero': true,
  'closed-over': true,
  'class-unknown': true,
  'colon-missing': true,
  'condition-wrong': true,
  'container-wrong': true,
  'contract-unfit': true,
  'control-home-unknown': true,
  'directive-misplaced': true,
  'directive-unknown': true,
  'drain-shut': true,
  'duplicate-id': true,
  'duplicate-procedure': true,
  'duplicate-step': true,
  'energy-live': true,
  'callout-twice': true,
  'figure-missing': true,
  'figure-not-shown': true,
  'figure-sizeless': true,
  'figure-unfit': true,
  'file-unreadable': true,
  'fill-open': true,
  'fill-shut': true,
  'front-matter-missing': true,
  'item-absent': true,
  'item-wrong-kind': true,
  'link-broken': true,
  'link-outside': true,
  'machine-name-differs': true,
  'machine-unsaid': true,
  'mix-over': true,
  'needs-cycle': true,
  'needs-later': true,
  'not-home': true,
  'nothing-there': true,
  'old-back': true,
  'old-unsaid': true,
  'reverse-asks': true,
  'reverse-at-unused': true,
  'reverse-empty': true,
  'reverse-of-later': true,
  'pattern-count': true,
  'pattern-overlap': true,
  'perform-cycle': true,
  'position-missing': true,
  'precedence-cycle': true,
  'quantity-wrong': true,
  'raw-html': true,
  'reference-unfit': true,
  'section-twice': true,
  'start-not-met': true,
  'state-unfit': true,
  'still-connected': true,
  'still-held': true,
  'thread-unknown': true,
  'too-deep': true,
  'tool-length-wrong': true,
  'too-large': true,
  'too-many-undone': true,
  'too-many': true,
  uncapped: true,
  'under-pressure': true,
  'unit-wrong-kind': true,
  'units-wrong': true,
  'unknown-item': true,
  'unknown-reference': true,
  'variants-wrong': true,
  'verb-unfit': true,
  'verb-unknown': true,
  'waiver-expired': true,
  'waiver-of-no-rule': true,
  'waiver-unused': true,
  'waiver-without-reason': true,
  'yaml-broken': true,
  'yaml-shape': true,
};
