import type { Change, Redline } from '../../schemas/redline.ts';
import { makeRedline, readRevision } from '../../src/redline/index.ts';
import { filesOf } from '../support/manual.ts';

type Texts = Readonly<Record<string, string>>;

/** The redline of two manuals, from their texts by path. */
export function redlineOf(before: Texts, after: Texts): Redline {
  const about = { version: '0.0.0', today: '2026-01-01' };
  return makeRedline(
    readRevision(filesOf(before), { revision: 'v1' }, about),
    readRevision(filesOf(after), {}, about),
    { name: 'tallybolt', version: about.version },
  );
}

/** Changes as `risk kind message`, in order. */
export const toldOf = (changes: readonly Change[]): readonly string[] =>
  changes.map(({ risk, kind, message }) => `${risk} ${kind} ${message}`);

/** No-break spaces as blanks, so that tests can be read. */
export const plain = (text: string): string => text.replaceAll('\u00a0', ' ');

export const machine = `machine: press
name: Baling press
fasteners:
  cover-bolt: { name: cover bolt, count: 8, thread: M10, class: 8.8, torque: { stages: [20 N·m, 45 N·m], threads: oiled }, holds: cover }
parts:
  cover: { name: top cover }
  seal: { name: seal, single-use: true, behind: cover }
circuits:
  oil: { name: hydraulic oil, fluid: HLP 46, capacity: 38 L, drain: plug, fill: cap, pressure: 180 bar }
connections:
  plug: { name: drain plug, type: clip }
  cap: { name: filler cap, type: clip }
energy:
  mains: { name: mains supply, type: electrical, isolate-before: [cover] }
tools:
  lifting-eye: { name: lifting eye }
hazards:
  ram: { signal: warning, hazard: The ram falls, harm: Crushed hands, avoid: Block it., raised-by: [{ verb: remove, item: cover }] }
`;

export const job = `---
procedure: change-seal
title: Change the seal
revision: 1
people: 1
---

## Removal

1. :isolate{item=mains}.
2. ::hazard{of=ram}

   :remove{item=cover-bolt}.
   ::step{#bolts-out time="5 min"}
3. :remove[Lift the cover off with a second person]{item=cover with=lifting-eye}.
   ::step{people=2 needs=bolts-out}
4. :remove[Pull the old seal out of its groove]{item=seal}.

## Installation

1. :install[Press the new seal in]{item=seal new}.
2. :install[Lower the cover onto its dowels]{item=cover}.
3. :install[Put in the 8 cover bolts]{item=cover-bolt}.
4. :torque[Torque the cover bolts crosswise]{item=cover-bolt}.
5. :restore{item=mains}.
`;

export const caller = `---
procedure: yearly-service
title: Yearly service
---

1. ::perform{procedure=change-seal}
`;

export const manual: Texts = {
  'manual.yaml': 'title: Press manual\nvariants:\n  feed: [belt, ram]\n  cold-kit: [no, yes]\n',
  'machines/press.yaml': machine,
  'procedures/change-seal.md': job,
  'procedures/yearly-service.md': caller,
};

/** What an edit of the small manual changes: each pair replaces a text of a file that has it. */
export function edited(
  ...edits: readonly (readonly [file: 'machine' | 'job' | 'manual', from: string, to: string])[]
): Redline {
  return redlineOf(manual, withEdits(...edits));
}

export function withEdits(
  ...edits: readonly (readonly [file: 'machine' | 'job' | 'manual', from: string, to: string])[]
): Texts {
  const paths = {
    machine: 'machines/press.yaml',
    job: 'procedures/change-seal.md',
    manual: 'manual.yaml',
  };
  const after = { ...manual };
  for (const [file, from, to] of edits) {
    const path = paths[file];
    const text = after[path] ?? '';
    if (!text.includes(from)) throw new Error(`${path} has no “${from}”`);
    after[path] = text.replace(from, () => to);
  }
  return after;
}
