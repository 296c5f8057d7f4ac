import { describe, expect, it } from 'vitest';
import { inspect } from '../../src/report/index.ts';
import { wordsFoundIn } from './inspect-step.ts';

// There are 4 guard bolts, and a hinge pin on the left and one on the right.
// Sentences as a careful writer puts them; common practice, no published source.

const sound = [
  '1. :remove[Take the four guard bolts out]{item=guard-bolt}.',
  '1. :remove[Take the 4 bolts out]{item=guard-bolt}.',
  '1. :remove[Take all four long guard bolts out]{item=guard-bolt}.',
  '1. :remove[Take two of the 4 guard bolts out]{item=guard-bolt qty=2}.',
  '1. :remove[Take the M8 bolts out]{item=guard-bolt}.',
  '1. :remove[Take the 8 mm bolts out]{item=guard-bolt}.',
  '1. :remove[Take the size 8 bolts out]{item=guard-bolt}.',
  '1. :torque[Torque in two stages bolts that were oiled]{item=guard-bolt}.',
  '1. :loosen[Loosen two bolts on each side]{item=guard-bolt}.',
  '1. :loosen[Loosen the guard bolts, one bolt at a time]{item=guard-bolt}.',
  '1. :loosen[Loosen the long bolt and then the three short ones]{item=guard-bolt}.',
  '1. :loosen[Loosen the 4 bolts by two turns each]{item=guard-bolt}.',
  '1. :remove[Take the four bolts with their eight washers out]{item=guard-bolt}.',
  '1. :remove[Take the two cover screws]{item=guard-bolt}.',
  '1. :remove[Take both hinge pins out]{item=hinge-pin}.',
  '1. :remove[Take the pair of hinge pins out]{item=hinge-pin}.',
  '1. :remove[Take one hinge pin]{item=hinge-pin each=left} out.',
  '1. :remove[Take two bolts]{item=guard-bolt qty=2} out.\n2. :remove[Take the other two guard bolts out]{item=guard-bolt}.',
  '1. :remove[Take two bolts]{item=guard-bolt qty=2} out.\n2. :install[Put the two bolts back]{item=guard-bolt}.',
  '1. :remove[Take one bolt]{item=guard-bolt qty=1} out.\n2. :loosen[Loosen the three bolts that are left]{item=guard-bolt}.',
  '1. :check[Look at two of the guard bolts]{item=guard-bolt}.',
  '1. :loosen[Loosen the bolts]{item=guard-bolt} and look at the two bolts below.',
  '1. :loosen[Loosen it]{item=guard-bolt}, and count the six bolts of the cover.',
  '1. :remove{item=guard-bolt}',
];

const unsound: readonly (readonly [body: string, words: string, moves: number])[] = [
  ['1. :remove[Take the six guard bolts out]{item=guard-bolt}.', 'six guard bolts', 4],
  ['1. :remove[Take the 8 bolts out]{item=guard-bolt}.', '8 bolts', 4],
  ['1. :remove[Take 14 bolts out]{item=guard-bolt}.', '14 bolts', 4],
  ['1. :remove[Take twenty-four bolts out]{item=guard-bolt}.', 'twenty-four bolts', 4],
  ['1. :remove[Take both bolts out]{item=guard-bolt}.', 'both bolts', 4],
  ['1. :remove[Take a pair of bolts out]{item=guard-bolt}.', 'a pair of bolts', 4],
  [
    '1. :remove[Take the three long steel bolts out]{item=guard-bolt}.',
    'three long steel bolts',
    4,
  ],
  ['1. :remove[Take the five retaining screws out]{item=guard-bolt}.', 'five retaining screws', 4],
  ['1. :remove[Take three of the 4 bolts out]{item=guard-bolt}.', 'three of the 4 bolts', 4],
  ['1. :remove[Take each of the 6 bolts out]{item=guard-bolt}.', '6 bolts', 4],
  ['1. :loosen[Loosen the 5 bolts by two turns each]{item=guard-bolt}.', '5 bolts', 4],
  ['1. :remove[Take four bolts out]{item=guard-bolt qty=3}.', 'four bolts', 3],
  ['1. :remove[Take out]{item=guard-bolt} the six guard bolts.', 'six guard bolts', 4],
  ['1. Now the three :remove[guard bolts]{item=guard-bolt} come out.', 'three guard bolts', 4],
  ['1. :remove[Take three hinge pins out]{item=hinge-pin}.', 'three hinge pins', 1],
  [
    '1. :remove[Take one bolt]{item=guard-bolt qty=1} out.\n2. :remove[Take the two bolts that are left]{item=guard-bolt}.',
    'two bolts',
    4,
  ],
];

const counts = (body: string) => wordsFoundIn(body).filter(({ rule }) => rule === 'count-in-words');

describe('count-in-words', () => {
  it.for(sound)('says nothing to: %s', (body) => {
    expect(counts(body).map(({ message }) => message)).toEqual([]);
  });

  it.for(unsound)('finds in: %s', ([body, words, moves]) => {
    expect(counts(body).map(({ data }) => [data.words, data.moves])).toEqual([[words, moves]]);
  });

  it('points at the count that it goes by', () => {
    const [found] = counts('1. :remove[Take the 9 bolts out]{item=guard-bolt}.');
    expect(found?.related.map(({ label }) => label)).toEqual(['the count is declared here']);
    expect(found?.help).toContain('`qty=9`');
    const [other] = counts('1. :remove[Take the 3 bolts out]{item=guard-bolt qty=2}.');
    expect(other?.related.map(({ label }) => label)).toEqual(['counted here']);
  });

  it('knows what a performed procedure and the contract leave', () => {
    const machine =
      'machine: m\nname: M\nfasteners:\n  bolt: { name: bolt, count: 8, tightness: hand-tight }\n';
    const procedure = (id: string, front: string, body: string) => ({
      path: `procedures/${id}.md`,
      text: `---\nprocedure: ${id}\ntitle: ${id}\nmachine: m\n${front}---\n\n${body}`,
    });
    const files = (words: string) => ({
      texts: [
        { path: 'manual.yaml', text: 'title: T\n' },
        { path: 'machines/m.yaml', text: machine },
        procedure(
          'half',
          'leaves: { bolt: { out: 3, tight: 5 } }\n',
          '1. :remove{item=bolt qty=3}\n',
        ),
        procedure(
          'all',
          '',
          `1. ::perform{procedure=half}\n2. :remove[Take ${words} out]{item=bolt}.\n3. :install{item=bolt}\n`,
        ),
        procedure(
          'back',
          'starts: { bolt: { out: 3, tight: 5 } }\n',
          `1. :install[Put ${words} in]{item=bolt}.\n`,
        ),
      ],
      unreadable: [],
      others: [],
    });
    const told = (words: string) =>
      inspect(files(words), 'test')
        .report.findings.filter(({ level }) => level !== 'note')
        .map(({ rule, file }) => `${rule} ${file}`);
    expect(told('the five bolts')).toEqual([]);
    expect(told('the three bolts')).toEqual([]);
    expect(told('the four bolts')).toEqual([
      'count-in-words procedures/all.md',
      'count-in-words procedures/back.md',
    ]);
  });
});
