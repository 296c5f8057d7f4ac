import { expect, test } from 'vitest';
import { check } from '../support/manual.ts';

/** Doubled values that are told, with the lines they stand in. */
function told(page: string, machine = ''): string[] {
  const { report } = check({
    'procedures/a.md': page,
    ...(machine !== '' && { 'machines/m.yaml': machine }),
  });
  return report.findings
    .filter(({ rule }) => rule === 'pair-disagrees')
    .map(({ file, start, end, data }) => {
      const width = end.offset - start.offset;
      return `${file}:${start.line} ${width} ${String(data.second)}`;
    });
}

test('pairs are read wherever a writer can put words', () => {
  const machine = `machine: m
name: M
circuits:
  oil: { name: oil, fluid: "SAE 30, 3 L (1 US gal)", capacity: 3 L, bleed: "At 2 bar (40 psi).", dispose: "20 L (6 US gal) a can" }
tools:
  wrench: { name: wrench, size: "20 to 100 N·m (15 to 90 lbf·ft)" }
consumables:
  tape: { name: tape, specification: "1/2 in (14 mm) wide" }
hazards:
  hot: { signal: warning, hazard: Over 80 °C (160 °F), harm: Burns, avoid: "Wait until 40 °C (110 °F)." }
`;
  const page = `---
procedure: a
title: A
summary: Uses 44 lbf·ft (65 N·m).
interval: every 100 mi (200 km)
---

:::warning{hazard="Pressure over 5 bar (90 psi)" harm="Cut of 2 mm (1 in)"}
Let it down to 0.5 bar (9 psi).
:::

1. :check[Check at 60 N·m (50 lbf·ft)]{item=oil}. Not \`60 N·m (50 lbf·ft)\`.

| Gap |
|---|
| 0.2 mm (0.08 in) |
`;
  expect(told(page, machine)).toEqual([
    'machines/m.yaml:4 13 1 US gal',
    'machines/m.yaml:4 13 40 psi',
    'machines/m.yaml:4 14 6 US gal',
    'machines/m.yaml:6 30 15 to 90 lbf·ft',
    'machines/m.yaml:8 13 14 mm',
    'machines/m.yaml:10 13 160 °F',
    'machines/m.yaml:10 13 110 °F',
    'procedures/a.md:4 17 65 N·m',
    'procedures/a.md:5 14 200 km',
    'procedures/a.md:8 13 90 psi',
    'procedures/a.md:8 10 1 in',
    'procedures/a.md:9 14 9 psi',
    'procedures/a.md:12 17 50 lbf·ft',
    'procedures/a.md:16 15 0.08 in',
  ]);
});

test('sound pairs of all these sorts are left alone', () => {
  const page = `---
procedure: a
title: A
summary: Uses 44 lbf·ft (60 N·m).
interval: every 100 mi (160 km)
---

1. Torque to 60 N·m (44 lbf·ft). Leave 1/2 in (12.7 mm). Keep max 5 bar (72 psi), 1 500 kPa (218 psi), 20 mm [0.79 in].
`;
  expect(told(page)).toEqual([]);
});
