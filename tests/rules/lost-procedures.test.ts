import { describe, expect, it } from 'vitest';
import { inspect } from '../../src/report/index.ts';

const machine = `machine: pump
name: Pump
parts:
  cover: { name: cover }
  rotor: { name: rotor, behind: [cover] }
circuits:
  oil: { name: oil, fluid: oil, capacity: 2 L, drain: [plug] }
fasteners:
  plug: { name: drain plug }
`;

const drain = `---
procedure: drain-oil
title: Drain the oil
leaves: { plug: out }
---

1. :remove{item=plug}.
`;

const look = (front: string, id = 'look-inside') => `---
procedure: ${id}
title: Look inside
${front}---

1. :check{item=cover}. :check{item=rotor}. :check{item=oil}.
`;

function rulesOf(procedures: Readonly<Record<string, string>>): string[] {
  const texts = [
    { path: 'manual.yaml', text: 'title: Pump manual\n' },
    { path: 'machines/pump.yaml', text: machine },
    ...Object.entries(procedures).map(([name, text]) => ({
      path: `procedures/${name}.md`,
      text,
    })),
  ];
  const { report } = inspect({ texts, unreadable: [], others: [] }, '0');
  return [...new Set(report.findings.map(({ rule }) => rule))].toSorted();
}

describe('what no procedure seems to use or to go on from', () => {
  it('is told where every procedure could be read', () => {
    expect(rulesOf({ drain })).toEqual(['orphan-procedure', 'unused-entry']);
  });

  it.for([
    ['broken front matter', 'yaml-broken', { drain, look: look('time: "5 min\n') }],
    ['front matter of another shape', 'yaml-shape', { drain, look: look('', 'Look Inside') }],
    ['no front matter', 'front-matter-missing', { drain, look: '1. :check{item=cover}.\n' }],
    ['an id that another has', 'duplicate-id', { drain, look: look('', 'drain-oil') }],
    [
      'a procedure performed that is not there',
      'unknown-procedure',
      { drain: `${drain}2. ::perform{procedure=fill-oil}\n` },
    ],
  ] as const)('is not told beside %s', ([, rule, procedures]) => {
    const found = rulesOf(procedures);
    expect(found).toContain(rule);
    expect(found).not.toContain('unused-entry');
    expect(found).not.toContain('orphan-procedure');
  });
});
