import type { Verb } from '../../schemas/directives.ts';
import { type ItemKind, isSingleUse, type StatefulItem } from '../catalogue/index.ts';

export type StatefulKind = StatefulItem['kind'];

/** States of each kind, home state first. Controls have positions of their own. */
export const statesOf = {
  fastener: ['tight', 'snug', 'loose', 'out', 'gone'],
  part: ['in', 'aside', 'out', 'gone'],
  connection: ['made', 'joined', 'open', 'capped'],
  circuit: ['full', 'filled', 'part-drained', 'drained'],
  energy: ['live', 'isolated'],
  control: [],
  aid: ['away', 'fitted'],
} as const satisfies Record<StatefulKind, readonly string[]>;

/** The second account of a circuit that stands under pressure. It need not balance. */
export const pressureStates = ['pressurised', 'relieved'] as const;

/** Away from home, back to it, or neither. */
export type Direction = 'out' | 'back' | 'within';

/** How a verb moves the pieces of an item. */
export interface Move {
  /** States that pieces may be taken from, first ones first. */
  readonly from: readonly string[];
  readonly to: string;
  readonly direction: Direction;
  /** True where a piece that was thrown away can only come back as a new one. */
  readonly needsNew?: readonly string[];
  /** True where nothing can happen to a piece in another state: a bolt that is out is not torqued. */
  readonly idleElsewhere?: true;
}

type Rule = Move | ((item: StatefulItem, how: { isNew: boolean; partly: boolean }) => Move);

const hasFigure = (item: StatefulItem): boolean =>
  (item.kind === 'fastener' || item.kind === 'connection') && item.torque !== undefined;

const fitted = (item: StatefulItem): string =>
  item.kind === 'fastener' && item.tightness === 'hand-tight' ? 'tight' : 'snug';

const moves: Record<StatefulKind, Partial<Record<Verb, Rule>>> = {
  fastener: {
    remove: (item) => ({
      from: ['loose', 'snug', 'tight'],
      to: isSingleUse(item) ? 'gone' : 'out',
      direction: 'out',
    }),
    discard: (item) => ({
      from: isSingleUse(item) ? ['out', 'loose', 'snug', 'tight'] : ['out'],
      to: 'gone',
      direction: 'out',
    }),
    loosen: { from: ['tight', 'snug'], to: 'loose', direction: 'out' },
    install: (item, { isNew }) => ({
      from: isNew ? ['gone', 'out'] : ['out'],
      to: fitted(item),
      direction: 'back',
      needsNew: isNew ? [] : ['gone'],
    }),
    replace: (item) => ({
      from: ['gone', 'out', 'loose', 'snug', 'tight'],
      to: fitted(item),
      direction: 'back',
    }),
    tighten: (item) => ({
      from: hasFigure(item) ? ['loose'] : ['loose', 'snug'],
      to: hasFigure(item) ? 'snug' : 'tight',
      direction: 'back',
      idleElsewhere: true,
    }),
    // A stage before the last one leaves it short of its torque.
    torque: (_item, { partly }) => ({
      from: partly ? ['loose', 'snug'] : ['loose', 'snug', 'tight'],
      to: partly ? 'snug' : 'tight',
      direction: 'back',
      idleElsewhere: true,
    }),
  },
  part: {
    remove: (item) => ({
      from: ['in', 'aside'],
      to: isSingleUse(item) ? 'gone' : 'out',
      direction: 'out',
    }),
    'set-aside': { from: ['in'], to: 'aside', direction: 'out' },
    return: { from: ['aside'], to: 'in', direction: 'back' },
    discard: (item) => ({
      from: isSingleUse(item) ? ['out', 'aside', 'in'] : ['out'],
      to: 'gone',
      direction: 'out',
    }),
    install: (_item, { isNew }) => ({
      from: isNew ? ['gone', 'out', 'aside'] : ['out', 'aside'],
      to: 'in',
      direction: 'back',
      needsNew: isNew ? [] : ['gone'],
    }),
    replace: {
      from: ['gone', 'out', 'aside', 'in'],
      to: 'in',
      direction: 'back',
    },
  },
  connection: {
    disconnect: { from: ['made', 'joined'], to: 'open', direction: 'out' },
    cap: {
      from: ['open'],
      to: 'capped',
      direction: 'within',
      idleElsewhere: true,
    },
    uncap: {
      from: ['capped'],
      to: 'open',
      direction: 'within',
      idleElsewhere: true,
    },
    connect: (item) => ({
      from: ['open'],
      to: hasFigure(item) ? 'joined' : 'made',
      direction: 'back',
    }),
    torque: {
      from: ['joined', 'made'],
      to: 'made',
      direction: 'back',
      idleElsewhere: true,
    },
  },
  circuit: {
    drain: (_item, { partly }) => ({
      from: ['full', 'filled', 'part-drained'],
      to: partly ? 'part-drained' : 'drained',
      direction: 'out',
    }),
    fill: (item) => ({
      from: ['drained', 'part-drained'],
      to: item.kind === 'circuit' && item.bleed !== undefined ? 'filled' : 'full',
      direction: 'back',
    }),
    bleed: {
      from: ['filled', 'full'],
      to: 'full',
      direction: 'back',
      idleElsewhere: true,
    },
  },
  energy: {
    isolate: { from: ['live'], to: 'isolated', direction: 'out' },
    restore: { from: ['isolated'], to: 'live', direction: 'back' },
  },
  control: {},
  aid: {
    fit: { from: ['away'], to: 'fitted', direction: 'out' },
    withdraw: { from: ['fitted'], to: 'away', direction: 'back' },
  },
};

/** The move of a verb on an item; undefined where the verb changes no state of that kind. */
export function moveOf(
  verb: Verb,
  item: StatefulItem,
  how: { isNew: boolean; partly: boolean; to: string | undefined },
): Move | undefined {
  if (item.kind === 'control') {
    if (verb !== 'set' || how.to === undefined) return undefined;
    return {
      from: item.positions.filter((position) => position !== how.to),
      to: how.to,
      direction: how.to === item.home ? 'back' : 'out',
    };
  }
  const rule = moves[item.kind][verb];
  return typeof rule === 'function' ? rule(item, how) : rule;
}

const stateless: readonly Verb[] = ['check', 'measure', 'apply'];

/** Verbs that can be said of a kind. */
export function verbsFor(kind: ItemKind): readonly Verb[] {
  if (kind === 'tool' || kind === 'consumable' || kind === 'hazard') return stateless;
  const own = Object.keys(moves[kind]) as Verb[];
  const extra: readonly Verb[] =
    kind === 'circuit' ? ['relieve'] : kind === 'control' ? ['set'] : [];
  return [...own, ...extra, ...stateless];
}

/** States of an item, home state first. */
export function itemStates(item: StatefulItem): readonly string[] {
  if (item.kind !== 'control') return statesOf[item.kind];
  return [item.home, ...item.positions.filter((position) => position !== item.home)];
}
