import type { Place } from '../../schemas/finding.ts';
import type { Hazard } from '../../src/catalogue/index.ts';
import { allBlocks, type LinkedManual, type LinkedProcedure } from '../../src/link/index.ts';
import {
  type Event,
  eventsIn,
  panelsWithin,
  raisedBy,
  tellsOf,
} from '../../src/rules/reading/hazard-order.ts';
import type { HazardPanel } from '../../src/syntax/index.ts';
import { type Moving, movingActions } from './moving-actions.ts';
import type { Mutant } from './mutants.ts';

/** Why a mutant survives. */
export interface Reason {
  /** `same`: the machine is the same with it. `unseen`: it is not, and nothing can tell from what is written. */
  readonly kind: 'same' | 'unseen';
  readonly says: string;
}

interface Survivor {
  readonly mutant: Mutant;
  readonly manual: LinkedManual;
  readonly linked: LinkedProcedure;
}

type Class = Reason & { readonly holds: (survivor: Survivor) => boolean };

/** The reason for a survivor; undefined where there is none, which is a fault of the check. */
export function reasonFor(mutant: Mutant, manual: LinkedManual): Reason | undefined {
  const linked = manual.procedures.get(mutant.procedure);
  if (linked === undefined) return undefined;
  return classes.find(({ holds }) => holds({ mutant, manual, linked }));
}

const classes: readonly Class[] = [
  {
    kind: 'same',
    says: 'Bolts that come out in the next action need no loosening first.',
    holds: (survivor) => isMove(survivor, ['loosen']) && nextOf(survivor)?.verb === 'remove',
  },
  {
    kind: 'same',
    says: 'It is tightened, slackened and tightened again: the last one counts.',
    holds: (survivor) => isMove(survivor, ['tighten']) && nextOf(survivor)?.verb === 'loosen',
  },
  {
    kind: 'same',
    says: 'One of several is not fitted, and all that are fitted are taken away.',
    holds: (survivor) =>
      isMove(survivor, ['fit']) &&
      storyOf(survivor).some(({ verb, qty }) => verb === 'withdraw' && qty === undefined),
  },
  {
    kind: 'same',
    says: 'A control goes from one position to another on its way home, and no action needs either.',
    holds: (survivor) =>
      isMove(survivor, ['set']) &&
      [nextOf(survivor), beforeOf(survivor)].some((one) => one?.verb === 'set'),
  },
  {
    kind: 'same',
    says: 'Pieces, instances or positions of one thing are done in another order.',
    holds: (survivor) =>
      everyPair(
        survivor,
        (a, b) => a.item === b.item && (a.action.verb === b.action.verb || atOtherSides(a, b)),
      ),
  },
  {
    kind: 'same',
    says: 'The cap of the filler stands in nobody’s way while the circuit drains.',
    holds: (survivor) => everyPair(survivor, (a, b) => isFillerWith('drain', a, b)),
  },
  {
    kind: 'same',
    says: 'What becomes of a thing that is off already may be said sooner or later.',
    holds: (survivor) =>
      everyPair(survivor, ({ action: a }, { action: b }) => [a.verb, b.verb].includes('discard')),
  },
  {
    kind: 'same',
    says: 'The caps come off before the part is in place; nothing is connected without it.',
    holds: (survivor) =>
      everyPair(survivor, ({ action: a }, { action: b }) => [a.verb, b.verb].includes('uncap')),
  },
  {
    kind: 'same',
    says: 'The performed job leaves the machine as it found it, and nothing here waits for it.',
    holds: ({ mutant: { about }, manual }) => {
      if (about.is !== 'perform') return false;
      const front = manual.procedures.get(about.procedure)?.procedure.front;
      return front !== undefined && JSON.stringify(front.starts) === JSON.stringify(front.leaves);
    },
  },
  {
    kind: 'same',
    says: 'What a step inside a reverse does not say, the reverse writes itself.',
    holds: (survivor) => reversesOf(survivor).some((reverse) => isIn(survivor, reverse)),
  },
  {
    kind: 'same',
    says: 'What does not go away, the reverse of the section does not bring back.',
    holds: (survivor) =>
      !survivor.mutant.operator.startsWith('duplicate') &&
      reversesOf(survivor).some(({ of }) => {
        const section = survivor.linked.section(of);
        return section !== undefined && isIn(survivor, section);
      }),
  },
  {
    kind: 'same',
    says: 'Another panel tells of the hazard before it is raised.',
    holds: (survivor) => panelIs(survivor, (panel) => isToldElsewhere(survivor, panel)),
  },
  {
    kind: 'same',
    says: 'The panel still stands before the first action that raises its hazard.',
    holds: (survivor) =>
      survivor.mutant.operator === 'put a hazard behind its step' &&
      panelIs(survivor, (panel) => isRaisedLater(survivor, panel)),
  },
  {
    kind: 'unseen',
    says: 'The hazard is written out here, and no entry of the catalogue says what raises it.',
    holds: (survivor) => panelIs(survivor, ({ of }) => of === undefined),
  },
  {
    kind: 'unseen',
    says: 'The aid is fitted while the part that it blocks is still in.',
    holds: (survivor) =>
      everyPair(survivor, ({ item: a }, { item: b }) =>
        [a, b].some((one) => one.kind === 'aid' && one.blocks.includes(one === a ? b.id : a.id)),
      ),
  },
  {
    kind: 'unseen',
    says: 'Order inside an assembly that is off the machine is not asked for.',
    holds: (survivor) =>
      everyPair(survivor, ({ item: a }, { item: b }) => a.in !== undefined && a.in === b.in),
  },
  {
    kind: 'unseen',
    says: 'The count in the words disagrees, but all that went away comes back.',
    holds: ({ mutant: { about, operator } }) =>
      operator === 'change a count' &&
      about.is === 'action' &&
      'count' in about.item &&
      [String(about.item.count), 'both'].some((word) => about.action.words.includes(word)),
  },
  {
    kind: 'unseen',
    says: 'Amounts that are drained and filled are not added up.',
    holds: (survivor) =>
      isMove(survivor, ['drain']) &&
      survivor.mutant.about.is === 'action' &&
      survivor.mutant.about.action.amount !== undefined,
  },
  {
    kind: 'unseen',
    says: 'Air enters where a part of the circuit was off, but the circuit counts as full.',
    holds: (survivor) => isMove(survivor, ['bleed']) && beforeOf(survivor) === undefined,
  },
];

const reversesOf = ({ linked }: Survivor) =>
  [...allBlocks(linked.procedure)].filter((block) => block.type === 'reverse');

/** Whether the changed action stands in a part of the procedure. */
function isIn({ mutant: { about } }: Survivor, { place }: { readonly place: Place }): boolean {
  if (about.is !== 'action') return false;
  const { start, end } = about.action.place;
  return place.start.offset <= start.offset && end.offset <= place.end.offset;
}

function isMove({ mutant: { about } }: Survivor, verbs: readonly string[]): boolean {
  return about.is === 'action' && verbs.includes(about.action.verb);
}

/** What the procedure does with the item, in order of reading. */
function storyOf({ mutant: { about }, linked }: Survivor) {
  if (about.is !== 'action') return [];
  return [...movingActions(linked)]
    .filter(({ item }) => item === about.item)
    .map((one) => one.action);
}

function besideOf(survivor: Survivor, by: 1 | -1) {
  const { about } = survivor.mutant;
  const story = storyOf(survivor);
  const at = about.is === 'action' ? story.indexOf(about.action) : -1;
  return at < 0 ? undefined : story[at + by];
}

const nextOf = (survivor: Survivor) => besideOf(survivor, 1);
const beforeOf = (survivor: Survivor) => besideOf(survivor, -1);

/** Two actions on instances of one item that have nothing to do with each other. */
function atOtherSides(a: Moving, b: Moving): boolean {
  const sides = (one: Moving) => one.action.each.map((ref) => ref.id);
  return (
    sides(a).length > 0 && sides(b).length > 0 && !sides(a).some((id) => sides(b).includes(id))
  );
}

function everyPair(
  { mutant: { about } }: Survivor,
  test: (a: Moving, b: Moving) => boolean,
): boolean {
  return about.is === 'swap' && about.pairs.every(([a, b]) => test(a, b));
}

/** A cap or plug of the filler moves beside an action on its circuit. */
function isFillerWith(verb: 'drain' | 'fill', a: Moving, b: Moving): boolean {
  return [
    [a, b],
    [b, a],
  ].some(
    ([circuit, point]) =>
      circuit?.item.kind === 'circuit' &&
      circuit.action.verb === verb &&
      point !== undefined &&
      circuit.item.fill.includes(point.item.id),
  );
}

function panelIs({ mutant: { about } }: Survivor, test: (panel: HazardPanel) => boolean): boolean {
  return about.is === 'panel' && test(about.panel);
}

/** The hazard of a panel stands in the catalogue, and another panel tells of it before anything raises it. */
function isToldElsewhere({ linked, manual }: Survivor, panel: HazardPanel): boolean {
  const hazard = panel.of && linked.item(panel.of);
  if (hazard?.kind !== 'hazard') return false;
  const events = [...eventsIn(linked)];
  const raised = events.findIndex((event) => raises(linked, event, hazard));
  const inTime = raised < 0 ? [] : events.slice(0, raised);
  return inTime.some((event) => {
    if (event.is === 'panel') return event.panel !== panel && tellsOf(event.panel, hazard, linked);
    if (event.is === 'action') return false;
    const inner = panelsWithin(manual, event.procedure);
    return inner.some((one) => tellsOf(one.panel, hazard, one.owner));
  });
}

function isRaisedLater({ linked, mutant }: Survivor, panel: HazardPanel): boolean {
  const hazard = panel.of && linked.item(panel.of);
  const moved = mutant.edits.at(-1);
  if (hazard?.kind !== 'hazard' || moved === undefined) return false;
  const first = [...eventsIn(linked)].find((event) => raises(linked, event, hazard));
  return first?.is === 'action' && first.action.place.start.offset >= moved.start;
}

const raises = (linked: LinkedProcedure, event: Event, hazard: Hazard): boolean =>
  event.is === 'action' && raisedBy(event.action, linked).includes(hazard);
