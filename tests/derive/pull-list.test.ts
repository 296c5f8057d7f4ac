import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type PullLine, PullLister, pullList } from '../../src/derive/index.ts';
import { mostOf, printAsWritten, toNumber } from '../../src/quantity/index.ts';
import { linkedManual } from '../render/linked-manual.ts';

const machine = `machine: m
name: M
fasteners:
  bolt: { name: bolt, count: 4, single-use: true, stack: [flat washer], thread: M8, class: 8.8, part-number: B-8 }
parts:
  seal: { name: seal, single-use: true }
  rope: { name: rope, when: winch }
circuits:
  oil: { name: oil, fluid: HLP 46, capacity: 38 L, containers: [5 L, 20 L], drain: plug }
  coolant:
    name: coolant
    fluid: antifreeze
    capacity: 9 L
    mix: { concentrate: 50 %, water: 50 % }
    containers: { concentrate: [1 L, 2 L] }
  ready: { name: ready coolant, fluid: ready mix, capacity: 4 L, mix: { a: 50 %, b: 50 % }, containers: [5 L] }
aids:
  stand: { name: stand, each: [left, right], note: 2 t each }
tools:
  wrench: { name: wrench, size: 20 to 200 N·m }
  winder: { name: winder, when: winch }
consumables:
  grease: { name: grease, containers: [400 g] }
  cloth: { name: cloth }
`;

type Texts = Readonly<Record<string, string>>;

function manualOf(procedures: Texts) {
  return linkedManual({
    'manual.yaml':
      'title: T\nvariants:\n  winch: [no, yes]\n  feed: [manual, hydraulic]\n  axles: [one, two]\nnever: [winch & axles = one]\n',
    'machines/m.yaml': machine,
    ...Object.fromEntries(
      Object.entries(procedures).map(([id, body]) => {
        const [front = '', text = ''] = body.includes('---') ? body.split('---') : ['', body];
        return [
          `procedures/${id}.md`,
          `---\nprocedure: ${id}\ntitle: ${id}\n${front}---\n\n${text.trim()}\n`,
        ];
      }),
    ),
  });
}

const told = ({ item, named, count, quantity, containers = [], when, isMost }: PullLine): string =>
  [
    isMost ? 'up to' : undefined,
    count,
    quantity && printAsWritten(quantity).replaceAll('\u00a0', ' '),
    named ?? item.id,
    containers
      .map((one) => `[${one.count} × ${printAsWritten(one.size).replaceAll('\u00a0', ' ')}]`)
      .join(''),
    when?.words,
  ]
    .filter(Boolean)
    .join(' ');

function linesOf(procedures: Texts, ids = Object.keys(procedures), condition?: string): string[] {
  const { value, problems } = pullList(manualOf(procedures), ids, condition);
  expect(problems).toEqual([]);
  return value.lines.map(told);
}

describe('one procedure', () => {
  test('has what it performs, each time: parts and fluids add up, tools serve all', () => {
    expect(
      linesOf(
        {
          job: '1. ::perform{procedure=part}\n2. ::perform{procedure=part}\n',
          part: '1. :fit{item=stand}\n2. :remove{item=bolt with=wrench}\n3. :drain{item=oil}. :fill{item=oil}\n',
        },
        ['job'],
      ),
    ).toEqual(['2 stand', '1 wrench', '8 bolt', '8 flat washer', '76 L oil [4 × 20 L]']);
  });

  test('counts what is repeated once', () => {
    expect(
      linesOf({ p: '1. :::repeat[until it is dry]\n   :replace{item=seal}.\n   :::' }),
    ).toEqual(['1 seal']);
  });

  test('says for whom and on which finding, in the words of the sheet', () => {
    expect(
      linesOf({
        p: `1. :remove{item=seal when="feed = hydraulic"}.
2. :replace{item=rope}.
3. :::if[the wrench is bent]
   :check{item=wrench with=cloth}. :replace{item=rope when="feed = manual"}
   :::
4. :check{item=wrench with=winder}.
`,
      }),
    ).toEqual([
      '1 winder for winch',
      '1 wrench',
      '2 rope for winch and feed = manual, if the wrench is bent',
      '1 rope for winch and (feed = hydraulic or not “the wrench is bent”)',
      '1 seal for feed = hydraulic',
      'cloth if the wrench is bent',
    ]);
  });

  test('fills what was drained, all that it holds where it was drained elsewhere', () => {
    expect(linesOf({ p: '1. :drain{item=oil amount="3 L"}. :fill{item=oil}.' })).toEqual([
      '3 L oil [1 × 5 L]',
    ]);
    expect(linesOf({ p: '1. :fill{item=oil}.' })).toEqual(['38 L oil [2 × 20 L]']);
    expect(linesOf({ p: '1. :drain{item=oil}. :fill{item=oil amount="30 L"}.' })).toEqual([
      '30 L oil [1 × 20 L][2 × 5 L]',
    ]);
    expect(
      linesOf(
        {
          job: '1. ::perform{procedure=out}\n2. ::perform{procedure=in}\n',
          in: 'starts: { oil: part-drained }\n---\n1. :fill{item=oil}.',
          out: 'leaves: { oil: part-drained }\n---\n1. :drain{item=oil amount="2 L"}. :drain{item=oil amount="2 L"}.',
        },
        ['job'],
      ),
    ).toEqual(['4 L oil [1 × 5 L]']);
    expect(linesOf({ p: '1. :drain{item=oil}.' })).toEqual([]);
  });

  test('has a fluid without an amount where it is topped up or used as an oil', () => {
    expect(linesOf({ p: '1. :bleed{item=oil}.' })).toEqual(['oil']);
    expect(linesOf({ p: '1. :check{item=seal with=oil}.' })).toEqual(['oil']);
    expect(linesOf({ p: '1. :fill{item=oil amount="2 L"}. :bleed{item=oil}.' })).toEqual([
      '2 L oil [1 × 5 L]',
    ]);
    expect(linesOf({ p: '1. :check{item=oil}.' })).toEqual([]);
  });

  test('has a mix as the fluids that it is mixed from, unless it is sold ready to use', () => {
    expect(linesOf({ p: '1. :fill{item=coolant}. :fill{item=ready}.' })).toEqual([
      '4.5 L concentrate [2 × 2 L][1 × 1 L]',
      '4.5 L water',
      '4 L ready [1 × 5 L]',
    ]);
  });

  test('adds up amounts of a consumable and rounds them up to its containers', () => {
    expect(
      linesOf({
        p: '1. :apply{item=grease amount="250 g"}. :apply{item=grease amount="0.2 kg"}. :check{item=seal with=cloth}.',
      }),
    ).toEqual(['cloth', '450 g grease [2 × 400 g]']);
  });

  test('tells the most of all where there are many cases', () => {
    const steps = ['a', 'b', 'c', 'd', 'e', 'f'].map(
      (finding) => `1. :::if[${finding}]\n   :replace{item=seal}.\n   :::`,
    );
    expect(linesOf({ p: steps.join('\n') })).toEqual([
      'up to 6 seal if a or b or c or d or e or f',
    ]);
  });

  test('that performs itself is cut where it comes round', () => {
    expect(
      linesOf(
        { a: '1. ::perform{procedure=b}\n2. :replace{item=seal}.', b: '1. ::perform{procedure=a}' },
        ['a'],
      ),
    ).toEqual(['1 seal']);
  });
});

describe('several procedures', () => {
  const pair = {
    p: '1. :replace{item=seal with=wrench}. :fill{item=oil amount="4 L"}.',
    q: '1. :replace{item=seal with=wrench}. :fill{item=oil amount="4 L"}. :replace{item=rope}.',
  };

  test('add up what is used up, over containers, and have a tool once', () => {
    expect(linesOf(pair)).toEqual(['1 wrench', '1 rope for winch', '2 seal', '8 L oil [2 × 5 L]']);
  });

  test('are named beside what they need', () => {
    const { lines } = pullList(manualOf(pair), ['p', 'q', 'p']).value;
    expect(
      lines.map(({ item, procedures }) => [item.id, procedures.map((one) => one.procedure.id)]),
    ).toEqual([
      ['wrench', ['p', 'q']],
      ['rope', ['q']],
      ['seal', ['p', 'q']],
      ['oil', ['p', 'q']],
    ]);
  });
});

describe('for some machines', () => {
  const parts = {
    p: '1. :replace{item=seal when="feed = hydraulic"}. :replace{item=rope when="feed = manual | axles = two"}.',
    roped: 'when: winch\n---\n1. :replace{item=rope}.',
  };

  test('a condition filters what does not apply and simplifies the rest', () => {
    expect(linesOf(parts, ['p'], 'feed = hydraulic')).toEqual(['1 rope for winch', '1 seal']);
    expect(linesOf(parts, ['p'], 'feed = hydraulic & winch')).toEqual(['1 rope', '1 seal']);
    expect(linesOf(parts, ['p'], '!winch & feed = manual')).toEqual([]);
    // What a procedure is for need not be said of its lines.
    expect(linesOf(parts, ['roped'])).toEqual(['1 rope']);
  });

  const problems = (ids: string[], condition?: string) =>
    pullList(manualOf(parts), ids, condition).problems.map((problem) =>
      problem.code === 'condition-wrong'
        ? problem.problem.code
        : problem.code === 'unknown-procedure'
          ? [problem.id, problem.near]
          : problem.procedure.procedure.id,
    );

  test('tells what cannot be meant', () => {
    expect(problems(['p'], 'winch & axles = one')).toEqual(['never-true']);
    expect(problems(['p'], 'winsh')).toEqual(['unknown-attribute']);
    expect(problems(['p'], 'winch &')).toEqual(['incomplete']);
    expect(problems(['p', 'rope', 'ropd'])).toEqual([
      ['rope', 'roped'],
      ['ropd', 'roped'],
    ]);
    expect(problems(['p', 'roped'], '!winch')).toEqual(['roped']);
    expect(problems(['p'], 'winch | !winch')).toEqual([]);
  });
});

describe('laws', () => {
  const condition = fc.constantFrom(
    '',
    ' when=winch',
    ' when="feed = hydraulic"',
    ' when="axles = two & feed = manual"',
    ' when="!winch | feed = hydraulic"',
  );
  const action = fc.tuple(
    fc.constantFrom(
      ':replace{item=seal',
      ':replace{item=rope',
      ':remove{item=bolt qty=1',
      ':fill{item=oil amount="3 L"',
      ':check{item=seal with=wrench',
    ),
    condition,
  );
  const work = fc
    .array(action, { minLength: 1, maxLength: 6 })
    .map((actions) => actions.map(([start, when]) => `1. ${start}${when}}`).join('\n'));
  const machines = ['no', 'yes'].flatMap((winch) =>
    ['manual', 'hydraulic'].flatMap((feed) =>
      ['one', 'two']
        .filter((axles) => winch === 'no' || axles === 'two')
        .map((axles) => `winch = ${winch} & feed = ${feed} & axles = ${axles}`),
    ),
  );
  const bare = ({ when: _, ...line }: PullLine): string => told({ ...line, when: undefined });

  test('the lines that hold for a machine are the list of that machine', () => {
    fc.assert(
      fc.property(work, (text) => {
        const lister = new PullLister(manualOf({ p: text }));
        const all = lister.list(['p']).value.lines;
        for (const one of machines) {
          const alone = lister.list(['p'], one).value.lines;
          expect(alone.every(({ when }) => when === undefined)).toBe(true);
          const holding = all.filter(
            ({ when }) =>
              when === undefined ||
              lister
                .list(['p'], `(${one}) & (${when.condition})`)
                .problems.every(({ code }) => code !== 'condition-wrong'),
          );
          expect(holding.map(bare)).toEqual(alone.map(bare));
        }
      }),
      { numRuns: 40 },
    );
  });

  test('the list of two jobs has the sum of both, and performing them comes to the same', () => {
    fc.assert(
      fc.property(work, work, (p, q) => {
        const manual = manualOf({
          p,
          q,
          both: '1. ::perform{procedure=p}\n2. ::perform{procedure=q}',
        });
        const lister = new PullLister(manual);
        for (const one of machines) {
          const amount = (ids: string[], id: string): number =>
            lister
              .list(ids, one)
              .value.lines.filter(({ item, named }) => item.id === id && named === undefined)
              .reduce((sum, line) => sum + amountOf(line), 0);
          for (const id of ['seal', 'rope', 'oil']) {
            expect(amount(['p', 'q'], id)).toBe(amount(['p'], id) + amount(['q'], id));
            expect(amount(['both'], id)).toBe(amount(['p', 'q'], id));
          }
          expect(amount(['p', 'q'], 'wrench')).toBe(
            Math.max(amount(['p'], 'wrench'), amount(['q'], 'wrench')),
          );
        }
      }),
      { numRuns: 40 },
    );
  });

  const amountOf = ({ count = 0, quantity }: PullLine): number =>
    quantity === undefined ? count : toNumber(mostOf(quantity));
});
