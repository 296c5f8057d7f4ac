import type { Finding } from '../../schemas/finding.ts';
import { inspect } from '../../src/report/index.ts';

const items = `items:
  fasteners:
    guard-bolt: { name: guard bolt, count: 4, torque: 22 N·m, holds: guard }
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
  aids:
    pin: { name: drum pin }
  tools:
    wrench: { name: torque wrench }
`;

/** What the rules on words find in one step. */
export function wordsFound(step: string): readonly Finding[] {
  const text = `---\nprocedure: a\ntitle: A\n${items}---\n\n1. ${step}\n`;
  const files = { texts: [{ path: 'procedures/a.md', text }], unreadable: [], others: [] };
  const rules = ['untracked-action', 'vague-torque', 'reverse-order'];
  return inspect(files, 'test').report.findings.filter(({ rule }) => rules.includes(rule));
}
