import stringWidth from 'string-width';
import { describe, expect, test } from 'vitest';
import type { Finding, Place } from '../../schemas/finding.ts';
import type { Report } from '../../schemas/report.ts';
import { type Paint, reportAsText } from '../../src/report/index.ts';
import { locator } from '../../src/source/index.ts';

const file = 'procedures/p.md';

/** A report of one finding at the words in `text`, with labels at other words. */
function reportOf(
  text: string,
  words: string,
  labels: Readonly<Record<string, string>> = {},
): Report {
  const finding: Finding = {
    rule: 'left-out',
    level: 'error',
    message: 'The pin is still out at the end',
    ...placeIn(file, text, words),
    data: {},
    related: Object.entries(labels).map(([at, label]) => ({ ...placeIn(file, text, at), label })),
    help: 'Put it back.',
  };
  return reportWith([finding]);
}

function reportWith(findings: Finding[]): Report {
  const count = (level: string): number => findings.filter((one) => one.level === level).length;
  return {
    tool: { name: 'tallybolt', version: '1' },
    manual: { title: 'Door manual', procedures: 1, steps: 2, actions: 1 },
    findings,
    waivers: [],
    summary: { error: count('error'), warning: count('warning'), note: count('note'), waived: 0 },
  };
}

function placeIn(path: string, text: string, words: string): Place {
  const start = text.indexOf(words);
  if (start < 0) throw new Error(`${words} is not in the text`);
  return locator(path, text).place(start, start + words.length);
}

/** The lines between the message and the help. */
function excerpt(report: Report, ...texts: [string, string?]): string[] {
  const [text, other = ''] = texts;
  const lines = reportAsText(report, (path) => (path === file ? text : other)).split('\n');
  return lines.slice(
    2,
    lines.findIndex((line) => line.startsWith('  do:')),
  );
}

describe('a finding', () => {
  test('is its place, level and rule, the message, the line and what to do', () => {
    const text = 'one\n1. :remove{item=pin}\n';
    expect(reportAsText(reportOf(text, ':remove{item=pin}'), () => text)).toBe(
      `procedures/p.md:2:4  error  left-out
  The pin is still out at the end
  2 | 1. :remove{item=pin}
    |    ^^^^^^^^^^^^^^^^^
  do: Put it back.

Door manual: 1 procedure, 2 steps, 1 action checked; 1 error.
`,
    );
  });

  test('names the variants for which it holds', () => {
    const [finding] = reportOf('pin', 'pin').findings;
    if (finding === undefined) throw new Error('there is no finding');
    const report = reportWith([{ ...finding, when: 'feed = hydraulic' }]);
    expect(reportAsText(report, () => 'pin')).toContain('at the end (when feed = hydraulic)\n');
  });

  test('without help, or in a file without text, has neither line', () => {
    const [finding] = reportOf('pin', 'pin').findings;
    if (finding === undefined) throw new Error('there is no finding');
    const { help: _, ...bare } = finding;
    expect(
      reportAsText(reportWith([bare]), () => '')
        .split('\n')
        .slice(0, 3),
    ).toEqual(['procedures/p.md:1:1  error  left-out', '  The pin is still out at the end', '']);
  });
});

describe('marks', () => {
  test('stand from top to bottom, each with its label, a line printed once', () => {
    const text = `${'\n'.repeat(8)}take out here, four go back\nand the rest\n`;
    const report = reportOf(text, 'the rest', {
      'four go back': 'only four',
      'take out here': 'taken out here',
    });
    expect(excerpt(report, text)).toEqual([
      '   9 | take out here, four go back',
      '     | ------------- taken out here',
      '     |                ------------ only four',
      '  10 | and the rest',
      '     |     ^^^^^^^^',
    ]);
  });

  test('in another file stand below those of the own file', () => {
    const catalogue = 'machine: m\nbolt: { count: 8 }\n';
    const [finding] = reportOf('four bolts', 'four').findings;
    if (finding === undefined) throw new Error('there is no finding');
    const related = [{ ...placeIn('machines/m.yaml', catalogue, '8'), label: 'the count' }];
    expect(excerpt(reportWith([{ ...finding, related }]), 'four bolts', catalogue)).toEqual([
      '  1 | four bolts',
      '    | ^^^^',
      '    in machines/m.yaml:',
      '  2 | bolt: { count: 8 }',
      '    |                - the count',
    ]);
  });

  test('over several lines go to the end of the first', () => {
    expect(excerpt(reportOf('ab cd\nef', 'cd\nef'), 'ab cd\nef')).toEqual([
      '  1 | ab cd',
      '    |    ^^',
    ]);
  });

  test('of nothing are one wide', () => {
    expect(excerpt(reportOf('ab cd', ''), 'ab cd')).toEqual(['  1 | ab cd', '    | ^']);
  });

  test('stand right after tabs, with CRLF, and under wide and combined characters', () => {
    const at = (text: string): string[] => excerpt(reportOf(text, 'pin'), text);
    expect(at('\tthe pin\there\r\nmore')).toEqual(['  1 |  the pin here', '    |      ^^^']);
    // 手 and 册 take two columns of a terminal each (Unicode UAX #11, East Asian Wide), e + U+0301 takes one.
    expect(at('手册 pin')).toEqual(['  1 | 手册 pin', '    |      ^^^']);
    expect(at('e\u0301 pin')).toEqual(['  1 | e\u0301 pin', '    |   ^^^']);
    expect(excerpt(reportOf('手册 pin', '手册'), '手册 pin')).toEqual([
      '  1 | 手册 pin',
      '    | ^^^^',
    ]);
  });
});

describe('a long line', () => {
  const words = Array.from({ length: 60 }, (_, i) => `word${i}`).join(' ');

  test('is cut so that the mark is in sight', () => {
    for (const word of ['word0', 'word1 ', 'word30', 'word58', 'word59']) {
      const [line = '', signs = ''] = excerpt(reportOf(words, word), words);
      expect(line.length).toBeLessThan(125);
      const from = signs.indexOf('^');
      expect(line.slice(from, signs.length)).toBe(word);
    }
  });

  test('shows … where it goes on', () => {
    const [line = ''] = excerpt(reportOf(words, 'word30'), words);
    expect(line).toMatch(/^ {2}1 \| ….*…$/);
    expect(excerpt(reportOf(words, 'word0'), words)[0]).toMatch(/^ {2}1 \| word0 .*…$/);
    expect(excerpt(reportOf(words, 'word59'), words)[0]).toMatch(/^ {2}1 \| ….*word59$/);
  });

  test('is shown twice where two marks do not fit into one stretch', () => {
    const lines = excerpt(
      reportOf(words, 'word50', { word5: 'taken out here', word7: 'and here' }),
      words,
    );
    expect(lines.map((line) => line.slice(0, 5))).toEqual([
      '  1 |',
      '    |',
      '    |',
      '  1 |',
      '    |',
    ]);
    const marked = (line = '', signs = '', sign = '^'): string =>
      line.slice(signs.indexOf(sign), signs.lastIndexOf(sign) + 1);
    expect(marked(lines[0], lines[1], '-')).toBe('word5');
    expect(marked(lines[0], lines[2], '-')).toBe('word7');
    expect(marked(lines[3], lines[4])).toBe('word50');
  });

  test('marked as a whole is marked to the end of what is seen', () => {
    const [line = '', signs = ''] = excerpt(reportOf(words, words), words);
    expect(signs.length).toBe(line.length - 1);
  });
});

describe('in a terminal', () => {
  const words = Array.from({ length: 40 }, (_, i) => `word${i}`).join(' ');
  const [finding] = reportOf(words, 'word30', { word35: 'a label of several words here' }).findings;
  if (finding === undefined) throw new Error('there is no finding');
  const report = reportWith([{ ...finding, message: `The ${words}`, help: `Write ${words}.` }]);
  const wide = { ...report, manual: { ...report.manual, title: words } };

  test.each([40, 60, 80, 120])('of %i columns no line is longer', (width) => {
    const lines = reportAsText(wide, () => words, undefined, width).split('\n');
    for (const line of lines) expect(stringWidth(line)).toBeLessThanOrEqual(width);
    const flat = lines.join(' ').replace(/ +/g, ' ');
    expect(flat).toContain(` The ${words}`);
    expect(flat).toContain(` do: Write ${words}.`);
    expect(flat).toContain('a label of several words here');
  });

  test('a broken line goes on below its words', () => {
    const text = reportAsText(report, () => words, undefined, 60);
    expect(text).toMatch(/\n {2}The word0 .*\n {2}word/);
    expect(text).toMatch(/\n {2}do: Write .*\n {6}word/);
  });

  test('colours take no room', () => {
    const bold = (one: string) => `\u001b[1m${one}\u001b[22m`;
    const paint: Paint = {
      level: { error: bold, warning: bold, note: bold },
      faint: bold,
      strong: bold,
    };
    const plain = reportAsText(wide, () => words, undefined, 60);
    const escapes = new RegExp(`${String.fromCharCode(27)}\\[\\d+m`, 'g');
    expect(reportAsText(wide, () => words, paint, 60).replace(escapes, '')).toBe(plain);
  });

  test('a word that is too long stands alone, and nothing is broken without a width', () => {
    const long = 'x'.repeat(70);
    const one = reportWith([{ ...finding, message: `A ${long} b` }]);
    expect(reportAsText(one, () => '', undefined, 40)).toContain(`  A\n  ${long}\n  b\n`);
    expect(reportAsText(one, () => '')).toContain(`  A ${long} b\n`);
  });
});

test('what would play with the terminal is shown as �', () => {
  const escapeCharacter = String.fromCharCode(27);
  const turn = '\u202E';
  const text = `${escapeCharacter}[31m pin ${turn}evil\u0007`;
  const report = reportOf(text, 'pin');
  const [finding] = report.findings;
  if (finding === undefined) throw new Error('there is no finding');
  const said = reportAsText(
    {
      ...reportWith([{ ...finding, message: `“${text}”`, help: text, when: text }]),
      manual: { ...report.manual, title: text },
    },
    () => text,
  );
  expect(said).not.toMatch(/[^\P{Cc}\n]|\p{Bidi_Control}/u);
  expect(said).toContain('  1 | �[31m pin �evil�\n    |       ^^^\n');
});

test('colours go to the place, the level, the marks and the word before the help', () => {
  const tag = (name: string) => (text: string) => `<${name}>${text}</${name}>`;
  const paint: Paint = {
    level: { error: tag('e'), warning: tag('w'), note: tag('n') },
    faint: tag('f'),
    strong: tag('s'),
  };
  expect(reportAsText(reportOf('a pin', 'pin', { a: 'one' }), () => 'a pin', paint)).toBe(
    `<s>procedures/p.md:1:3</s>  <e>error</e>  <f>left-out</f>
  The pin is still out at the end
  <f>1 |</f> a pin
  <f>  |</f> <f>- one</f>
  <f>  |</f>   <e>^^^</e>
  <s>do:</s> Put it back.

Door manual: 1 procedure, 2 steps, 1 action checked; 1 error.
`,
  );
});

test('the last line counts each level, and says so where nothing is found', () => {
  const [finding] = reportOf('pin', 'pin').findings;
  if (finding === undefined) throw new Error('there is no finding');
  const last = (levels: readonly Finding['level'][]): string =>
    reportAsText(reportWith(levels.map((level) => ({ ...finding, level }))), () => 'pin')
      .trim()
      .split('\n')
      .at(-1) ?? '';
  expect(last([])).toBe(
    'Door manual: 1 procedure, 2 steps, 1 action checked; everything balances.',
  );
  expect(last(['error', 'error', 'warning', 'note'])).toMatch(/; 2 errors, 1 warning, 1 note\.$/);
});
