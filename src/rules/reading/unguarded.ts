import type { Hazard } from '../../catalogue/index.ts';
import type { LinkedManual, LinkedProcedure } from '../../link/index.ts';
import type { Action, HazardPanel } from '../../syntax/index.ts';
import type { Examined } from '../rule.ts';
import { type Event, eventsIn, panelsWithin, raisedBy, tellsOf } from './hazard-order.ts';
import { onceFor } from './once-for.ts';

/** The first action of a procedure that raises a hazard before anything tells of it. */
export interface Unguarded {
  readonly procedure: LinkedProcedure;
  readonly hazard: Hazard;
  readonly action: Action;
  /** A panel that tells of it too late. */
  readonly late: HazardPanel | undefined;
}

/** Every hazard of every procedure that is raised before a panel tells of it, once each. */
export const unguarded: (examined: Examined) => readonly Unguarded[] = onceFor((examined) => [
  ...unguardedIn(examined),
]);

function* unguardedIn(examined: Examined): Generator<Unguarded> {
  const panels = panelsIn(examined.linked);
  for (const { expanded: procedure } of examined.subjects) {
    const events = [...eventsIn(procedure)];
    const told = new Set<Hazard>();
    for (const [at, event] of events.entries()) {
      if (event.is !== 'action') continue;
      for (const hazard of raisedBy(event.action, procedure)) {
        if (told.has(hazard)) continue;
        told.add(hazard);
        const tells = (other: Event): boolean => eventTells(panels, procedure, other, hazard);
        if (events.slice(0, at).some(tells)) continue;
        const late = events.find((other) => other.is === 'panel' && tells(other));
        yield {
          procedure,
          hazard,
          action: event.action,
          late: late?.is === 'panel' ? late.panel : undefined,
        };
      }
    }
  }
}

type Panels = (procedure: string) => ReturnType<typeof panelsWithin>;

const panelsIn: (manual: LinkedManual) => Panels = onceFor((manual) => {
  const known = new Map<string, ReturnType<typeof panelsWithin>>();
  return (procedure) => {
    const panels = known.get(procedure) ?? panelsWithin(manual, procedure);
    known.set(procedure, panels);
    return panels;
  };
});

function eventTells(panels: Panels, owner: LinkedProcedure, event: Event, hazard: Hazard): boolean {
  if (event.is === 'panel') return tellsOf(event.panel, hazard, owner);
  if (event.is === 'action') return false;
  return panels(event.procedure).some((one) => tellsOf(one.panel, hazard, one.owner));
}
