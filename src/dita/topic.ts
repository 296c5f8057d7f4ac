import type { SheetContext } from '../render/index.ts';

/** The topic that is being written. */
export interface Topic {
  readonly id: string;
  /** From its folder to the root of the export: `../`, or nothing. */
  readonly up: string;
  /** The values that an attribute of the manual's machines can take. */
  readonly valuesOf: (attribute: string) => readonly string[];
}

/** One for a procedure. Addresses in its context start at the root of the published manual. */
export interface TaskTopic extends Topic {
  readonly context: SheetContext;
}
