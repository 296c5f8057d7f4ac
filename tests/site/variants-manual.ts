/** A manual whose sheets differ with two things, for a browser to show. */
export const variantsManual: Readonly<Record<string, string>> = {
  'manual.yaml': `title: Winch truck manual
address: https://trucks.example/manual
variants:
  winch: { name: rope winch, values: [no, yes] }
  brakes: [overrun, none]
never:
  - winch & brakes = none
`,
  'machines/truck.yaml': `name: Truck
parts:
  rope: { name: rope, when: winch }
  drum: { name: drum, each: [left, right] }
  cable: { name: brake cable, when: brakes = overrun }
tools:
  hook: { name: rope hook }
hazards:
  snap: { signal: warning, hazard: Something snaps, harm: Cuts, avoid: Stand aside }
`,
  'procedures/service.md': `---
procedure: service
title: Service the truck
machine: truck
---

## Winch

::hazard{of=snap}

1. Pull the rope out of the winch.
   ::step{#out when=winch people=2 time="5 min"}
2. Sweep the deck.
   ::step{#sweep people=2 time="5 min"}
3. Wipe the plate, :remove{item=rope when=winch with=hook} and :check[look at the cable]{item=cable when="brakes = overrun"}.
4. :check[Feel the drum]{item=drum when="brakes = none"}. Note what you felt.
5. Look at the lamps.
   ::step{needs="out sweep"}
   1. Look at the first lamp.
      ::step{when=winch}
   2. Look at the second lamp.
6. :install{item=rope when=winch}. :check[Feel the drums]{item=drum when=winch}.
7. ::perform{procedure=brakes when="brakes = overrun"}

## Close

1. :check[Look at the drums]{item=drum}.
`,
  'procedures/brakes.md': `---
procedure: brakes
title: Adjust the brakes
machine: truck
when: brakes = overrun
---

1. Turn the adjuster.
2. Pull the rope tight.
   ::step{when=winch}
`,
};
