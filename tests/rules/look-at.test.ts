import { describe, expect, it } from 'vitest';
import type { ManualSettings } from '../../schemas/manual.ts';
import type { Draft, Look, Rule } from '../../src/rules/index.ts';
import { conclude, lookAt } from '../../src/rules/index.ts';
import { linkedManual } from './linked-manual.ts';
import { wholeOf } from './whole.ts';

const { linked, files } = linkedManual();
const examined = wholeOf(linked, files);

const at = (offset: number): Draft['place'] => ({
  file: 'manual.yaml',
  start: { line: 1, column: offset + 1, offset },
  end: { line: 1, column: offset + 2, offset: offset + 1 },
});

const saying = (id: string, drafts: readonly Draft[], settled: readonly string[] = []): Rule => ({
  id,
  family: 'form',
  level: 'warning',
  check: () => drafts,
  settles: () => settled,
});

const look = (rules: readonly Rule[], levels: ManualSettings['rules'] = {}): Look =>
  lookAt(rules, examined, levels);

const concluded = (...looks: readonly Look[]) =>
  conclude(looks, { levels: {}, titleOf: (id) => id.toUpperCase(), today: undefined }).findings;

describe('a look', () => {
  it('puts rule and level to a draft, and leaves out what is undefined', () => {
    const drafts = [{ place: at(0), message: 'a', help: undefined, item: undefined }];
    const { found } = look([saying('one', drafts)]);
    expect(found).toEqual([
      {
        finding: {
          rule: 'one',
          level: 'warning',
          message: 'a',
          ...at(0),
          data: {},
          related: [],
        },
      },
    ]);
    expect(Object.keys(found[0]?.finding ?? {})).not.toContain('help');
  });

  it('takes the level from the manual, or leaves the rule out', () => {
    const rule = saying('one', [{ place: at(0), message: 'a' }]);
    expect(look([rule], { one: 'error' }).found[0]?.finding.level).toBe('error');
    expect(look([rule], { one: 'off' }).found).toEqual([]);
  });

  it.for(['file-unreadable', 'yaml-broken', 'front-matter-missing'])(
    'keeps the level of %s',
    (id) => {
      const rule = saying(id, [{ place: at(0), message: 'a' }]);
      expect(look([rule], { [id]: 'off' }).found[0]?.finding.level).toBe('warning');
    },
  );
});

describe('a conclusion', () => {
  it('is sorted by place, then rule, then message, and tells each once', () => {
    const two = look([
      saying('two', [
        { place: at(3), message: 'b' },
        { place: at(3), message: 'a' },
      ]),
    ]);
    const one = look([
      saying('two', [{ place: at(3), message: 'a' }]),
      saying('one', [
        { place: at(3), message: 'z' },
        { place: at(1), message: 'y' },
      ]),
    ]);
    expect(concluded(two, one).map(({ rule, message }) => rule + message)).toEqual([
      'oney',
      'onez',
      'twoa',
      'twob',
    ]);
  });

  it('leaves out what another part settles for the same rule', () => {
    const open = look([saying('one', [{ place: at(0), message: 'a', unless: ['x', 'y'] }])]);
    expect(concluded(open)).toHaveLength(1);
    expect(concluded(open, look([saying('one', [], ['y'])]))).toHaveLength(0);
    expect(concluded(open, look([saying('two', [], ['y'])]))).toHaveLength(1);
  });

  it('leaves out what no part settles that it needs', () => {
    const needing = look([saying('one', [{ place: at(0), message: 'a', onlyIf: 'x' }])]);
    expect(concluded(needing)).toHaveLength(0);
    expect(concluded(needing, look([saying('one', [], ['x'])]))).toHaveLength(1);
  });

  it('names the procedures that perform a text, in order of id', () => {
    const told = look([saying('one', [{ place: at(0), message: 'a', fact: 'f' }])]);
    const by = (procedure: string, when?: string): Look => ({
      ...look([]),
      performing: [{ key: 'f', by: { procedure, place: at(7), when } }],
    });
    const [finding] = concluded(by('b', 'winch = yes'), told, by('a'));
    expect(finding?.related.map(({ label }) => label)).toEqual([
      '“A” performs this here',
      '“B” performs this here (winch = yes)',
    ]);
  });
});
