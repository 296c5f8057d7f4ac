import { yamlText } from './yaml-text.ts';

/** Removal, then reassembly that is written out from it: `::reverse`. */
export function replaceBelt(machine: string): string {
  return `---
procedure: replace-drive-belt
title: Replace the drive belt
machine: ${yamlText(machine)}
document: "201"
revision: 1
system: Drive
summary: Exchanges the belt when it is cracked, frayed or slips.
interval: every 1000 h of work or every 2 years
---

:::figure{#drive src="../../figures/drive.svg" alt="The mixer from its left side. The belt guard covers the belt that runs from the motor on the left to the gearbox on the right; the paddle shaft goes down from the gearbox."}
::callout{item=belt-guard at="45,30"}
::callout{item=motor-bolt at="15,72.5 33.3,72.5"}
::callout{item=drain-plug at="71.7,72.5"}
::callout{item=filler-plug at="66.7,42.5"}

The drive from its left side.
:::

## Preparation

<!-- The steps of the other procedure are done here; its sheet is linked, and what it leaves is counted. -->

1. ::perform{procedure=make-safe}

## Removal

<!-- An action is a verb, the words of the step in brackets, and the id of the entry. -->

1. :disconnect[Pull the lamp connector apart]{item=lamp-connector when=lamp}.
2. :remove[Take out the 4 guard screws]{item=guard-screw}.
   ::step{time="3 min"}
3. ::hazard{of=belt-starts}

   :remove[Lift the belt guard off]{item=belt-guard}.
4. :loosen[Loosen the 4 motor bolts]{item=motor-bolt}. Push the motor towards the gearbox.
5. :remove[Take the drive belt off and throw it away]{item=drive-belt}.
6. :::when[belts = two]
   :remove[Take the second belt off and throw it away]{item=second-belt}.
   :::

## Inspection

1. :check[Check the grooves of the 2 pulleys for wear and cracks]{item=pulley}.
   ::step{time="5 min"}

   :::if[a groove is worn or cracked]
   1. Do not put the machine back to work. Ask for new pulleys.
   :::

## Reassembly

<!--
The steps of the section "Removal" are written out backwards here, with new parts and torques. What stands between
the two lines comes in addition: before the motor bolts are tightened, the belt must have its tension.
-->

:::reverse{of=removal}
1. Move the motor away from the gearbox until the belt is tight. :measure[Press on the drive belt in the middle and measure its deflection]{item=drive-belt}.
   ::step{at=motor-bolt time="5 min"}
:::

## Completion

1. ::perform{procedure=return-to-service}
`;
}
