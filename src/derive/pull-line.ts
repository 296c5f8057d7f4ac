import type { Item } from '../catalogue/index.ts';
import type { LinkedProcedure } from '../link/index.ts';
import type { ContainerCount, Quantity, Single } from '../quantity/index.ts';
import type { PullCase } from './pull-case.ts';

export type PullKind = 'tool' | 'aid' | 'part' | 'fastener' | 'consumable' | 'fluid';

/** What lists have together, in their order. */
export const pullGroups: readonly { readonly name: string; readonly kinds: readonly PullKind[] }[] =
  [
    { name: 'Tools and aids', kinds: ['tool', 'aid'] },
    { name: 'Parts', kinds: ['part', 'fastener'] },
    { name: 'Consumables', kinds: ['consumable'] },
    { name: 'Fluids', kinds: ['fluid'] },
  ];

/** What is handed out. */
export interface PullThing {
  readonly kind: PullKind;
  readonly item: Item;
  /** What is fetched, where it is not the item itself: a washer of its stack, a fluid of its mix. */
  readonly named?: string;
  /** Pieces; none for what is taken as needed. */
  readonly count?: number;
  readonly quantity?: Single;
  /** Share of the mix: 50 %. */
  readonly share?: Quantity;
  /** Largest first; none where the catalogue names no sizes. */
  readonly containers?: readonly ContainerCount[];
}

/** One line of a pull list. Of the lines of one thing at most one holds for any machine and finding. */
export interface PullLine extends PullThing {
  /** A procedure that knows the item. */
  readonly one: LinkedProcedure;
  /** True where count or quantity is the most of many cases. */
  readonly isMost: boolean;
  readonly when: PullCase | undefined;
  /** Those of the asked procedures that need it. */
  readonly procedures: readonly LinkedProcedure[];
}
