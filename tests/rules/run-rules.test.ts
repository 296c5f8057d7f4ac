import { describe, expect, it } from 'vitest';
import type { Draft, Rule } from '../../src/rules/index.ts';
import { makeExamined, runRules } from '../../src/rules/index.ts';
import { linkedManual } from './linked-manual.ts';

const { linked, files } = linkedManual();
const examined = makeExamined(linked, [], files);

const at = (offset: number): Draft['place'] => ({
  file: 'manual.yaml',
  start: { line: 1, column: offset + 1, offset },
  end: { line: 1, column: offset + 2, offset: offset + 1 },
});

const saying = (id: string, drafts: readonly Draft[]): Rule => ({
  id,
  family: 'form',
  level: 'warning',
  check: () => drafts,
});

describe('runRules', () => {
  it('puts rule and level to a draft, and leaves out what is undefined', () => {
    const drafts = [{ place: at(0), message: 'a', help: undefined, item: undefined }];
    expect(runRules([saying('one', drafts)], examined, {})).toEqual([
      { rule: 'one', level: 'warning', message: 'a', ...at(0), data: {}, related: [] },
    ]);
    expect(Object.keys(runRules([saying('one', drafts)], examined, {})[0] ?? {})).not.toContain(
      'help',
    );
  });

  it('sorts by place, then rule, then message, and tells each once', () => {
    const found = runRules(
      [
        saying('two', [
          { place: at(3), message: 'b' },
          { place: at(3), message: 'a' },
          { place: at(3), message: 'a' },
        ]),
        saying('one', [
          { place: at(3), message: 'z' },
          { place: at(1), message: 'y' },
        ]),
      ],
      examined,
      {},
    );
    expect(found.map(({ rule, message }) => rule + message)).toEqual([
      'oney',
      'onez',
      'twoa',
      'twob',
    ]);
  });

  it('takes the level from the manual, or leaves the rule out', () => {
    const rule = saying('one', [{ place: at(0), message: 'a' }]);
    expect(runRules([rule], examined, { one: 'error' })[0]?.level).toBe('error');
    expect(runRules([rule], examined, { one: 'off' })).toEqual([]);
  });

  it.for(['file-unreadable', 'yaml-broken', 'front-matter-missing'])(
    'keeps the level of %s',
    (id) => {
      const rule = saying(id, [{ place: at(0), message: 'a' }]);
      expect(runRules([rule], examined, { [id]: 'off' })[0]?.level).toBe('warning');
    },
  );
});
