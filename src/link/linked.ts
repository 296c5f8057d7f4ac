import type { Catalogue, Item, ManualModel } from '../catalogue/index.ts';
import type { PictureSize } from '../source/index.ts';
import type { Procedure, Ref, Section } from '../syntax/index.ts';
import type { Outlines } from './outlines.ts';

/** A procedure with the entries that its references mean. */
export interface LinkedProcedure {
  readonly procedure: Procedure;
  /** Entries of its machine and its own. */
  readonly catalogue: Catalogue;
  item(ref: Ref | string): Item | undefined;
  section(ref: Ref): Section | undefined;
}

export interface LinkedManual {
  readonly manual: ManualModel;
  /** By id, in order of id. Of a share of a manual, those of the share and all that they perform. */
  readonly procedures: ReadonlyMap<string, LinkedProcedure>;
  /** Of the whole manual. */
  readonly outlines: Outlines;
  /** Sizes of the pictures that are known, by path. */
  readonly pictures: ReadonlyMap<string, PictureSize>;
}
