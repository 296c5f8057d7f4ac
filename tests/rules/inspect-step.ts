import type { Finding } from '../../schemas/finding.ts';
import { inspect } from '../../src/report/index.ts';

const items = `items:
  fasteners:
    guard-bolt: { name: guard bolt, count: 4, torque: 22 N·m, holds: guard, also-called: [retaining screw] }
    hinge-pin: { name: hinge pin, count: 1, each: [left, right] }
    cover-screw: { name: cover screw, count: 2 }
    band: { name: hose band }
  parts:
    guard: { name: belt guard, also-called: [shield] }
    belt: { name: belt }
  connections:
    hose: { name: return hose, type: hose }
  circuits:
    oil: { name: gear oil, fluid: gear oil, capacity: 4 L }
  controls:
    cock: { name: fuel cock, positions: [open, shut], home: open }
  energy:
    battery: { name: battery, type: electrical }
  aids:
    pin: { name: drum pin }
  tools:
    wrench: { name: torque wrench }
`;

/** What the rules on words find in one step. */
export const wordsFound = (step: string): readonly Finding[] => wordsFoundIn(`1. ${step}`);

/** The same in the whole body of a procedure. */
export function wordsFoundIn(body: string): readonly Finding[] {
  const text = `---\nprocedure: a\ntitle: A\n${items}---\n\n${body}\n`;
  const files = { texts: [{ path: 'procedures/a.md', text }], unreadable: [], others: [] };
  const rules = [
    'count-in-words',
    'jump-in-words',
    'not-imperative',
    'reverse-order',
    'sentence-too-long',
    'several-actions',
    'untracked-action',
    'vague-torque',
    'verb-differs',
  ];
  return inspect(files, 'test').report.findings.filter(({ rule }) => rules.includes(rule));
}
