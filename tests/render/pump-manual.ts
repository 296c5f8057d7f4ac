/** An invented portable pump and its manual, small enough to know by heart. */
export const pumpManual = {
  'manual.yaml': `
title: Fenwater P40 pump, workshop manual
document-prefix: FP-40
units:
  torque: [N·m, lbf·ft]
  volume: [L, US gal]
  mass: [kg, lb]
variants:
  drive: [electric, petrol]
safety: |
  Follow **local law** first.
`,
  'machines/pump.yaml': `
machine: pump
name: Fenwater P40
fasteners:
  cover-bolt:
    name: cover bolt
    count: 8
    thread: M10
    class: 8.8
    torque: 45 N·m
    stack: [spring washer, flat washer, flat washer]
    holds: cover
  hub-nut:
    name: hub nut
    thread: M16
    class: 10.9
    single-use: true
    torque:
      stages: [60 N·m, back off 1/2 turn, 120 N·m + 90°]
      threads: oiled
    holds: impeller
  drain-plug: { name: drain plug, thread: M14, torque: 25 N·m, hazards: [hot-water] }
  clamp-screw: { name: clamp screw, count: 2, tightness: snug }
parts:
  cover: { name: cover, mass: 12 kg }
  gasket: { name: cover gasket, single-use: true, part-number: FP-117, behind: cover }
  impeller: { name: impeller, behind: cover }
  wheel: { name: wheel, each: [left, right], mass: 5 kg }
circuits:
  coolant:
    name: coolant
    fluid: water and antifreeze
    capacity: 6 L
    mix: { antifreeze: 50 %, clean water: 50 % }
    drain: drain-plug
    dispose: Collect the old coolant for recycling
  gear-oil: { name: gear oil, fluid: ISO VG 150, capacity: 0.8 L }
aids:
  drain-pan: { name: drain pan }
  chock: { name: wheel chock, count: 2 }
tools:
  torque-wrench: { name: torque wrench, size: 20 to 200 N·m }
  gauge: { name: feeler gauge }
consumables:
  thread-compound: { name: thread compound, specification: medium strength }
hazards:
  hot-water:
    signal: warning
    hazard: Hot water under the cap
    harm: Scalds
    avoid: Let the pump cool first
  spin: { signal: danger, hazard: The impeller can turn, harm: Amputation, avoid: Lock the shaft }
`,
  'procedures/drain-coolant.md': `---
procedure: drain-coolant
title: Drain the coolant
system: Cooling
leaves: { coolant: drained }
---

## Drain

::hazard{of=hot-water}

1. :fit{item=drain-pan}.
2. :remove[Take out the drain plug]{item=drain-plug} and :drain{item=coolant}.
   ::step{time="10 min"}
3. :install{item=drain-plug} and :torque{item=drain-plug}.
   ::step{tools=torque-wrench time="5 min"}
4. :withdraw{item=drain-pan}.
`,
  'procedures/replace-impeller.md': `---
procedure: replace-impeller
document: 007
title: Replace the impeller
system: Pump
revision: 3
people: 1
tools: [gauge]
leaves: { coolant: drained, cover-bolt: { out: 4, tight: 4 } }
history:
  - { revision: 3, date: "2026-01-10", change: First issue }
---

Read [the drain job](drain-coolant.md#drain) first.

## Removal

1. ::perform{procedure=drain-coolant}
2. :remove{item=cover-bolt}
   ::step{#bolts-out people=2 time="15 min"}
3. :remove[Lift the cover off]{item=cover} and :remove{item=gasket}.

:::danger{hazard="The impeller can turn" harm="Amputation"}
Lock the shaft.
:::

:::notice{hazard="Grit" harm="Scored seal"}
Keep it clean.
:::

1. :remove{item=hub-nut}
   1. Hold the hub.
   2. :remove{item=impeller}.
      ::step{#impeller-out needs=bolts-out}

## Reassembly

1. :::needs{step=impeller-out}
   The shaft must be bare.
   :::

   :install{item=impeller}.
2. :install{item=hub-nut new}.

   :::torque{item=hub-nut}
   Hold the hub.
   :::
   ::step{time="1 h"}
3. :install[Lay a new gasket in]{item=gasket new}. :apply{item=cover-bolt with=thread-compound}.
4. :install{item=cover}, :install{item=cover-bolt} and :torque[torque the 8 cover bolts]{item=cover-bolt}.
5. :measure[Measure the gap]{item=impeller value="0.3..0.5 mm" with=gauge}.

   :::figure{src="../figures/gap one.svg" alt="Where the gap is"}
   The gap.
   :::
`,
  'procedures/fill-coolant.md': `---
procedure: fill-coolant
title: Fill the coolant
starts: { coolant: drained }
when: drive = petrol
---

1. :fill{item=coolant}. :check[Check the level]{item=gear-oil}. :fit{item=chock}.
2. :set-aside[Set the cover aside]{item=cover when="drive = petrol"}, then see <b>this</b>.

:::when[drive = petrol]
1. Wait.
:::

1. :::if[the belt is *cracked*]
   Stop.
   :::
`,
} as const;
