import type { ItemsInput } from '../../schemas/catalogue.ts';
import type { Place } from '../../schemas/finding.ts';
import type { DefaultTorque, Item } from './model.ts';
import type { Variants } from './reading.ts';

/** What the entries of a machine or a procedure are read against. */
export interface ItemsContext {
  readonly variants: Variants;
  readonly defaultTorques: readonly DefaultTorque[];
  /** Path of the groups in the file: empty, or `items` in a front matter. */
  readonly prefix: string;
  /** Entries of the machine, whose ids a procedure may not use again. */
  readonly taken: ReadonlyMap<string, Item>;
}

export type ItemGroup = keyof ItemsInput;

/** An entry as it is written, with where. */
export type WrittenItem = {
  [G in ItemGroup]: {
    readonly group: G;
    readonly id: string;
    readonly data: ItemsInput[G][string];
    readonly path: string;
    readonly place: Place;
  };
}[ItemGroup];
