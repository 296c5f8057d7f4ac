import { yamlText } from './yaml-text.ts';

/** A fluid that is drained and filled, with its plugs, written out step by step. */
export function changeGearOil(machine: string): string {
  return `---
procedure: change-gear-oil
title: Change the gear oil
machine: ${yamlText(machine)}
document: "301"
revision: 1
system: Service
summary: Drains the old oil of the gearbox and fills new oil in.
interval: every 2000 h of work
---

Warm oil runs out faster than cold oil.

## Preparation

1. ::perform{procedure=make-safe}

## Drain

1. :fit[Put the drain pan under the gearbox]{item=drain-pan}.
2. :remove[Unscrew the filler plug]{item=filler-plug}.
3. ::hazard{of=warm-oil}

   :remove[Unscrew the drain plug]{item=drain-plug}. :drain[Let all gear oil run into the pan]{item=gear-oil}.
   ::step{time="5 min" wait="10 min"}
4. :remove[Take the plug washer off and throw it away]{item=plug-washer}.

## Fill

1. :install[Put a new plug washer on the plug]{item=plug-washer new}.
2. :install[Screw the drain plug in]{item=drain-plug}.
3. :torque[Torque the drain plug]{item=drain-plug with=torque-wrench}.
4. :fill[Fill in new gear oil up to the edge of the filler hole]{item=gear-oil}.
   ::step{time="5 min"}

   :::fluid{item=gear-oil}
   :::
5. :install[Screw the filler plug in]{item=filler-plug}.
6. :withdraw[Take the drain pan away]{item=drain-pan}. Wipe up what is spilt.
   ::step{consumables=cloth}

## Completion

1. ::perform{procedure=return-to-service}
`;
}
