import { yamlText } from './yaml-text.ts';

/** A shared procedure that others perform: the machine is left isolated, and says so under `leaves:`. */
export function makeSafe(machine: string): string {
  return `---
# The id by which other procedures perform this one: ::perform{procedure=make-safe}
procedure: make-safe
title: Make the machine safe
machine: ${yamlText(machine)}
document: "101"
revision: 1
system: Safety
summary: Stops the machine and locks its energy out. Every job starts here.
# How this procedure leaves the machine. It is checked against the steps, and trusted wherever it is performed.
leaves:
  mains: isolated
  lockout-padlock: fitted
---

The opposite procedure is [Return the machine to service](return-to-service.md).

## Isolate

1. Tell the people at the machine that you are about to stop it. Wait until the paddle stands still.
   ::step{time="2 min"}
2. :isolate[Turn the main switch to off]{item=mains}.
   ::step{#switched-off}
3. :fit[Lock the main switch with your own lockout padlock]{item=lockout-padlock}.
   ::step{needs=switched-off}
4. Press the start button. :check[Check that the motor does not start]{item=mains}.
`;
}

export function returnToService(machine: string): string {
  return `---
procedure: return-to-service
title: Return the machine to service
machine: ${yamlText(machine)}
document: "102"
revision: 1
system: Safety
summary: Takes the lockout off after the work. The last procedure of every job.
# The state that this procedure needs to find.
starts:
  mains: isolated
  lockout-padlock: fitted
---

The opposite procedure is [Make the machine safe](make-safe.md).

## Restore

1. Make sure that no tool, cloth or loose part lies on the machine.
   ::step{time="2 min"}
2. :check[Check that the belt guard sits firmly]{item=belt-guard}.
3. Make sure that all people stand clear.
4. :withdraw[Take your lockout padlock off]{item=lockout-padlock}.
5. :restore[Turn the main switch to on]{item=mains}.
`;
}
